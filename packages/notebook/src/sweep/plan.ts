/** The plan of the line for each count, shaded by how full every zone is. */
import type { MapPath, PlanZone } from '@loopwright/charts'
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { isPlainLoop, type LineSpec, listWords, startZones } from '@loopwright/line'
import type { SweepCount } from '@loopwright/study'
import { withCarriers } from '@loopwright/study/change'
import type { Scenario } from '@loopwright/scenario'
import type { Figure } from '../cells/figure.ts'
import { metresText, shortNumber } from '../inputs/quantityWords.ts'
import { planAlt } from '../page/planHtml.ts'
import { counted } from '../words/countedWords.ts'
import type { Period } from './period.ts'

/** zones that the finding names */
const NAMED = 3

/** The plan with all that goes with it: the fullest zones as its finding, every zone in its table. */
export function occupancyPlan(scenario: Scenario, count: SweepCount, period: Period): Figure {
  const zones = planZones(scenario, count, startZones(withCarriers(scenario.line, count.carriers)))
  const valueMeaning = `share of the ${period.one} with a carrier in the zone, %`
  const paths = isPlainLoop(scenario.line) ? null : scenario.line.paths.map(mapPath)
  return {
    finding: `The ${period.line}: ${finding(zones, count.carriers)}`,
    picture: { kind: 'plan', zones, paths, valueMeaning },
    alt: planAlt({ zones, paths, valueMeaning }),
    howToRead: `Each cell is a zone${paths === null ? ', to scale' : ''}; the stronger the shade, the longer a carrier is in it. The number in it is that share of the ${period.one}, in per cent.${startSign(zones)}`,
    table: zoneTable(scenario, zones, count.carriers, period),
    tableOpen: false,
  }
}

/** A plan that shows where things stand, and no quantity. */
export function unshadedPlan(line: LineSpec, zones: readonly PlanZone[]): Pick<Figure, 'picture' | 'alt' | 'howToRead'> {
  const paths = isPlainLoop(line) ? null : line.paths.map(mapPath)
  const signs = [
    `Each cell is a zone${paths === null ? ', to scale' : ''}`,
    paths === null ? 'brackets are stations' : 'strong outlines are stations',
    ...(zones.some(({ transfer }) => transfer) ? [`crossed ${paths === null ? 'cells' : 'corners'} are transfers`] : []),
  ]
  return {
    picture: { kind: 'plan', zones, paths, valueMeaning: null },
    alt: planAlt({ zones, paths, valueMeaning: null }),
    howToRead: `${signs.join('; ')}.${startSign(zones)}`,
  }
}

/** A path as the map of a line draws it. */
function mapPath({ from, to, manual, takes }: LineSpec['paths'][number]): MapPath {
  const who = takes.rejected === true ? 'rejected' : takes.rejected === false ? 'good' : takes.load
  return { from, to, manual: manual !== null, ...(who === null ? {} : { takes: who }) }
}

/** Results hold no positions: those of time 0 are known. (MODEL.md §10) */
const startSign = (zones: readonly PlanZone[]): string =>
  zones.some(({ starts }) => starts === true) ? ' Small squares: where the carriers stand when a run begins.' : ''

/**
 * The loop as drawn; without a count nothing is shaded. Zones of no given length are drawn 1 m long.
 *
 * @param standing  zones in which carriers start, the store left out of the drawing. Default: none is shown
 */
export function planZones(scenario: Scenario, count: SweepCount | null, standing: readonly number[] = []): PlanZone[] {
  const { line, layout } = scenario
  return line.zones.map((zone, index) => {
    const station = line.stations.find((one) => one.zone === index)
    const value = count?.zones[index]?.occupancyMean ?? null
    return {
      name: zone.name,
      lengthMetres: zone.lengthMetres ?? 1,
      turn: layout.turns[index] ?? null,
      transfer: zone.transfer !== null,
      station:
        station === undefined
          ? null
          : { key: station.name, title: station.title, duties: (['load', 'unload'] as const).filter((duty) => station[duty] !== null) },
      value,
      label: value === null ? null : formatNumber(value * 100, 0),
      ...(standing.includes(index) ? { starts: true } : {}),
    }
  })
}

function finding(zones: readonly PlanZone[], carriers: number): string {
  const length = zones.reduce((sum, zone) => sum + zone.lengthMetres, 0)
  const fullest = zones.toSorted((a, b) => (b.value ?? 0) - (a.value ?? 0)).slice(0, NAMED)
  const named = fullest.map(
    (zone) => `${zone.name}${zone.station === null ? '' : ` ${zone.station.title}`} (${formatShare(zone.value ?? 0)})`,
  )
  return `${counted(zones.length, 'zone')}, ${shortNumber(length)} m. With ${counted(carriers, 'carrier')} the fullest are ${listWords(named)}.`
}

function zoneTable(scenario: Scenario, zones: readonly PlanZone[], carriers: number, { one }: Period): Table {
  const metresOf = (zone: number): number | null => scenario.line.zones[zone]?.lengthMetres ?? null
  return tableOf<PlanZone>({
    caption: `Zones in travel order, with ${counted(carriers, 'carrier')}`,
    columns: [
      wordColumn('Zone', 'zone', 'name of the zone', ({ name }) => name),
      {
        head: 'Length',
        text: (_, index) => (metresOf(index) === null ? 'not given' : metresText(metresOf(index)!)),
        data: [['length_m', 'metres; empty: not given', (_, index) => metresOf(index)]],
      },
      wordColumn('What it is', 'kind', 'station, transfer or storage', whatItIs),
      {
        head: 'Turn',
        align: 'left',
        text: ({ turn }) => turn ?? '–',
        data: [['turn', 'of the travel direction, left or right; empty: none', ({ turn }) => turn]],
      },
      {
        head: `With a carrier,\n% of the ${one}`,
        text: ({ label }) => label ?? '–',
        data: [['occupancy_mean', `share of the ${one} with a carrier in it, 0 … 1`, ({ value }) => value]],
      },
    ],
    rows: zones,
    note: 'A carrier counts from the start of its move into a zone to the start of its move out.',
  })
}

function whatItIs(zone: PlanZone): string {
  if (zone.station !== null) return `station ${zone.station.title}`
  return zone.transfer ? 'transfer' : 'storage'
}
