/** What is assumed about what only some lines have: ways, people, supplies, receivers, inspections, sections, safety stops, crews. */
import type { Table } from '@loopwright/charts/table'
import { isPlainLoop, type LineSpec, STORE, type StopSource, stopSources, type SupplySpec } from '@loopwright/line'
import { distributionWords } from './distributionWords.ts'
import { secondsText, shareText } from './quantityWords.ts'
import { listTable } from './rows.ts'

type Rows = [string, string][]

/** null where the line has nothing of it */
export function generalInputs(line: LineSpec): Table | null {
  const rows = [...wayRows(line), ...peopleRows(line), ...goodsRows(line), ...stopRows(line)]
  return rows.length === 0 ? null : listTable('Ways, people and goods', rows)
}

const stationName = (line: LineSpec, station: number): string => line.stations[station]!.name
const placeName = (line: LineSpec, place: number): string => (place === STORE ? 'store' : line.zones[place]!.name)

function wayRows(line: LineSpec): Rows {
  if (isPlainLoop(line)) return manualRows(line)
  const several = (end: 'from' | 'to', zone: number): boolean => line.paths.filter((path) => path[end] === zone).length > 1
  const diverts = line.zones.flatMap((zone, z) => (several('from', z) ? [`${zone.name}: ${DIVERTS[zone.divert]}`] : []))
  const merges = line.zones.flatMap((zone, z) => (several('to', z) ? [`${zone.name}: ${mergeWords(line, zone.merge)}`] : []))
  const conditions = line.paths.flatMap((path) => {
    const words = takesWords(line, path.takes)
    return words === '' ? [] : [`${placeName(line, path.from)} to ${placeName(line, path.to)}: ${words}`]
  })
  const row = (name: string, parts: readonly string[]): Rows => (parts.length === 0 ? [] : [[name, parts.join('; ')]])
  return [
    ...row('Several ways out', diverts),
    ...row('Several ways in', merges),
    ...row('Ways for some only', conditions),
    ...manualRows(line),
  ]
}

const DIVERTS = { first: 'the first way', alternate: 'the ways in turn', free: 'the first free way' } as const

function mergeWords(line: LineSpec, merge: LineSpec['zones'][number]['merge']): string {
  if (merge.kind === 'waiting') return 'the longest waiting'
  return merge.kind === 'alternate' ? 'in turn' : `first from ${merge.from.map((zone) => placeName(line, zone)).join(', ')}`
}

function takesWords(line: LineSpec, { variants, load, rejected, forStation }: LineSpec['paths'][number]['takes']): string {
  return [
    variants === null ? null : variants.map((variant) => line.variants[variant]!).join(', '),
    load === null ? null : `${load} carriers`,
    rejected === null ? null : rejected ? 'rejected products' : 'no rejected products',
    forStation === null ? null : `work left at ${stationName(line, forStation)}`,
  ]
    .filter((part) => part !== null)
    .join(', ')
}

function manualRows(line: LineSpec): Rows {
  return line.paths.flatMap(({ from, to, manual, moveSeconds }): Rows => {
    if (manual === null || moveSeconds === null) return []
    const way = `${placeName(line, from)} to ${placeName(line, to)}`
    return [
      [
        manual.kind === 'push' ? 'Push by hand' : 'Pull by hand',
        `${way}, ${distributionWords(moveSeconds)}, by ${stationName(line, manual.station)}`,
      ],
    ]
  })
}

function peopleRows(line: LineSpec): Rows {
  const rows: Rows = line.operators.map(({ name, stations, start }) => [
    `Operator ${name}`,
    `${stations.map((station) => stationName(line, station)).join(', ')}; starts at ${stationName(line, start)}`,
  ])
  const walks = line.walks.map(
    ({ between: [a, b], seconds }) => `${stationName(line, a)} to ${stationName(line, b)} ${secondsText(seconds)}`,
  )
  if (line.operators.length > 0) rows.push(['Walks', walks.length === 0 ? '0 s everywhere' : `${walks.join('; ')}; others 0 s`])
  return rows
}

function goodsRows(line: LineSpec): Rows {
  const supply = (of: string, { arrivals, queueLimit }: SupplySpec): Rows => {
    if (arrivals.kind === 'always') return []
    const limit = queueLimit === null ? 'no limit to the queue' : `${queueLimit} wait at most`
    const comes = arrivals.kind === 'every' ? `every ${distributionWords(arrivals.seconds)}` : `${arrivals.instants.length} at given times`
    return [[`Products come to ${of}`, `${comes}; ${limit}`]]
  }
  return [
    ...supply('the line', line.supply),
    ...line.stations.flatMap((station) => (station.supply === null ? [] : supply(station.name, station.supply))),
    ...line.stations.flatMap(
      ({ name, receiver }): Rows =>
        receiver === null
          ? []
          : [
              [
                `Receiver of ${name}`,
                `${distributionWords(receiver.cycleSeconds)} for one product, ${receiver.queue === 1 ? '1 place' : `${receiver.queue} places`} before it`,
              ],
            ],
    ),
    ...line.inspections.map(({ task, rejectProbability }): [string, string] => [
      `Inspection ${line.tasks[task]}`,
      `rejects ${shareText(rejectProbability)}`,
    ]),
    ...line.rework.map(({ task, only }): [string, string] => [
      `Rework ${line.tasks[task]}`,
      only ? 'for rejected products only' : 'again for rejected products',
    ]),
  ]
}

function stopRows(line: LineSpec): Rows {
  const isWhole = line.sections.length === 1 && line.sections[0]!.zones.length === line.zones.length
  return [
    ...(isWhole
      ? []
      : line.sections.map(({ name, zones }): [string, string] => [
          `Section ${name}`,
          zones.map((zone) => placeName(line, zone)).join(', '),
        ])),
    ...stopSources(line).flatMap((source) => stopRow(line, source)),
    ...(line.repairCrews === null ? [] : [['Repair crews', `${line.repairCrews}`] as [string, string]]),
  ]
}

/** Breakdowns have a table of their own. */
function stopRow({ stations }: LineSpec, source: StopSource): Rows {
  switch (source.kind) {
    case 'breakdown':
      return []
    case 'safety stop': {
      const { name, safetyStop } = stations[source.station]!
      const { probability, resetSeconds } = safetyStop!
      return [[`Safety stop at ${name}`, `${shareText(probability)} of moves, reset after ${distributionWords(resetSeconds)}`]]
    }
  }
}
