/** What is assumed about zones, drives, transfers and carriers. */
import type { Table } from '@loopwright/charts/table'
import { isPlainLoop, type LineSpec } from '@loopwright/line'
import { distributionWords } from './distributionWords.ts'
import { metresText, secondsText, shortNumber, spanText, speedText } from './quantityWords.ts'
import { listTable } from './rows.ts'

export function lineInputs(line: LineSpec): Table {
  const { zones, paths, carriers } = line
  const transfers = zones.flatMap((zone) => (zone.transfer === null ? [] : [zone.transfer]))
  const lengths = zones.map((zone) => zone.lengthMetres)
  const rows: [string, string][] = [
    ['Zones', `${zones.length}, of which ${transfers.length} are transfers (90°)`],
    ['Zone length', spanText(lengths, metresText, 'not given')],
  ]
  if (paths.every((path) => path.distanceMetres !== null)) {
    rows.push([
      isPlainLoop(line) ? 'Loop length' : 'Length of all ways',
      `${shortNumber(paths.reduce((sum, path) => sum + (path.distanceMetres ?? 0), 0))} m`,
    ])
  }
  rows.push(
    [
      'Speed',
      spanText(
        paths.map((path) => path.speedMetresPerSecond),
        speedText,
        'given move times',
      ),
    ],
    [
      'Acceleration and braking',
      spanText(
        paths.map((path) => path.accelerationMetresPerSecondSquared),
        (a) => `${shortNumber(a)} m/s²`,
        'no ramps',
      ),
    ],
    ['Control reaction', secondsText(line.reactionSeconds)],
    [
      'Sensor before the stop point',
      spanText(
        zones.filter((zone) => zone.transfer === null).map((zone) => zone.sensorBeforeStopMetres),
        metresText,
        'at it',
      ),
    ],
    ['Release', releaseWords(line)],
  )
  if (transfers.length > 0) {
    const clearExit = transfers.filter((transfer) => transfer.enterOnlyIfExitClear).length
    rows.push(
      [
        'Transfer, lift',
        spanText(
          transfers.map((transfer) => transfer.liftSeconds),
          secondsText,
          '',
        ),
      ],
      [
        'Transfer, lower',
        spanText(
          transfers.map((transfer) => transfer.lowerSeconds),
          secondsText,
          '',
        ),
      ],
      ['Transfers entered only if the exit is clear', `${clearExit} of ${transfers.length}`],
    )
  }
  const given = paths.flatMap((path) => (path.moveSeconds === null ? [] : [distributionWords(path.moveSeconds)]))
  if (given.length > 0) rows.push(['Given move times', `${given.length} paths: ${[...new Set(given)].slice(0, 4).join('; ')}`])
  rows.push(
    ['Carrier, length × width', `${optionalMetres(carriers.lengthMetres)} × ${optionalMetres(carriers.widthMetres)}`],
    ['Start', startWords(carriers.start)],
  )
  return listTable('The line', rows)
}

function releaseWords(line: LineSpec): string {
  const trains = line.zones.filter((zone) => zone.release === 'train').length
  if (trains === 0) return 'single: a carrier starts when the zone ahead is clear'
  const stagger = `train, stagger ${secondsText(line.staggerSeconds)}`
  return trains === line.zones.length ? stagger : `${stagger} in ${trains} zones; single in ${line.zones.length - trains}`
}

function startWords(start: LineSpec['carriers']['start']): string {
  if (start === 'spread') return 'empty carriers, spread evenly over the storage zones'
  if (start === 'packed') return 'empty carriers, packed from the first zone on'
  if (start === 'store') return 'empty carriers, in the store'
  return `empty carriers, in ${start.length} zones named`
}

function optionalMetres(metres: number | null): string {
  return metres === null ? 'not given' : metresText(metres)
}
