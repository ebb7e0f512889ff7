/** What `check` says: what was understood of a scenario, in plain words. */
import { formatDuration, formatNumber, formatShare, type Table } from '@loopwright/charts'
import type { Scenario, ScenarioNotes } from '@loopwright/scenario'
import { type LineFacts, lawTerms } from '@loopwright/study'
import { stationName } from './stationTable.ts'

const plural = (count: number, one: string, many = `${one}s`): string => `${formatNumber(count, 0)} ${count === 1 ? one : many}`
const seconds = (value: number): string => `${formatNumber(value, 1)} s`

/** "22 zones, 33.0 m; a carrier may wait in 18 of them. 4 transfers (Z09, Z11, Z20, Z22), entered only when the exit is clear." */
export function loopSentence({ line }: Scenario, facts: LineFacts): string {
  const length = facts.loopMetres === null ? '' : `, ${formatNumber(facts.loopMetres, 1)} m`
  const waits = line.zones.length - facts.exitClearTransfers.length
  const what = facts.law === null ? `Line, no single loop: ${plural(line.paths.length, 'path')},` : 'Loop:'
  const loop = `${what} ${plural(line.zones.length, 'zone')}${length}; a carrier may wait in ${waits === line.zones.length ? 'each' : `${waits}`} of them.`
  const { transfers, exitClearTransfers } = facts
  if (transfers.length === 0) return `${loop} No transfers.`
  const clear =
    exitClearTransfers.length === 0
      ? ''
      : exitClearTransfers.length === transfers.length
        ? ', entered only when the exit is clear'
        : `; entered only when the exit is clear: ${exitClearTransfers.join(', ')}`
  return `${loop} ${plural(transfers.length, 'transfer')} (${transfers.join(', ')})${clear}.`
}

/** How the zones are called where the file gives no names: they name random streams and stand in tables. Null where it names all. */
export function zoneNamesSentence(notes: Pick<ScenarioNotes, 'generatedZoneNames' | 'zoneNames'>): string | null {
  const made = notes.generatedZoneNames
  if (made.length === 0) return null
  const names = made.length <= 3 ? made.join(', ') : `${made[0]} … ${made.at(-1)}`
  return made.length === notes.zoneNames.length ? `The zones are called ${names}.` : `Zones without a name in the file are called ${names}.`
}

/** The breaks of the judged stretch, and whether the conveyor goes on; null where there are none. */
export function breaksSentence({ line }: Pick<Scenario, 'line'>): string | null {
  const { warmupSeconds, endSeconds } = line.window
  const judged = line.breaks.filter(
    ({ startSeconds, lengthSeconds }) => startSeconds < endSeconds && startSeconds + lengthSeconds > warmupSeconds,
  )
  if (judged.length === 0) return null
  const each = judged.map(
    ({ startSeconds, lengthSeconds }) =>
      `${formatDuration(lengthSeconds)} after ${formatDuration(Math.max(0, startSeconds - warmupSeconds))}`,
  )
  return `Breaks in it: ${each.join(', ')}; the conveyor ${line.conveyorDuringBreaks ? 'goes on' : 'stops too'}.`
}

/** Named sets of changed values in the file; null where there are none. */
export function variationsSentence({ variations }: Pick<ScenarioNotes, 'variations'>): string | null {
  return variations.length === 0 ? null : `Variations in the file: ${variations.join(', ')}.`
}

/** "Carriers: 12, 1.2 m long, 1.2 m wide, spread evenly at the start." */
export function carriersSentence({ line }: Scenario): string {
  const { count, lengthMetres, widthMetres, start } = line.carriers
  const size = [
    ...(lengthMetres === null ? [] : [`${lengthMetres} m long`]),
    ...(widthMetres === null ? [] : [`${widthMetres} m wide`]),
    start === 'spread'
      ? 'spread evenly at the start'
      : start === 'packed'
        ? 'packed from the first zone on at the start'
        : start === 'store'
          ? 'in the store at the start'
          : 'each at its named zone at the start',
  ]
  return `Carriers: ${[count, ...size].join(', ')}.`
}

/** What is judged, and for how long. */
export function windowSentence({ line, calendar, plan }: Scenario): string {
  const { warmupSeconds, endSeconds } = line.window
  const length = formatDuration(endSeconds - warmupSeconds)
  const warm = warmupSeconds === 0 ? 'from the start' : `after ${formatDuration(warmupSeconds)} of warm-up`
  const judged =
    calendar === null
      ? `Judged: ${length} ${warm}`
      : `Judged: ${calendar.judged}, ${length} ${warm}, ${formatDuration(calendar.netSeconds * calendar.shifts)} of it net`
  const wanted =
    plan === null
      ? 'no plan given'
      : `plan ${formatNumber(plan.units, Number.isInteger(plan.units) ? 0 : 1)} per ${plan.per === 'shift' ? 'shift' : plan.per}`
  return `${judged}; ${wanted}.`
}

/** Takt against the slowest exchange; null without a takt or a station. */
export function taktSentence({ calendar }: Scenario, facts: LineFacts): string | null {
  const takt = calendar?.taktSeconds ?? null
  if (takt === null || facts.slowestStation === null) return null
  const slowest = facts.stations[facts.slowestStation]!
  if (slowest.exchangeSeconds === null) return null
  const pace = `Takt ${seconds(takt)} against the slowest exchange, ${seconds(slowest.exchangeSeconds)} at ${stationName(slowest.name, slowest.title)}`
  const reserve = takt - slowest.exchangeSeconds
  return reserve >= 0
    ? `${pace}: ${seconds(reserve)} (${formatShare(reserve / takt)}) are left for stops and for waiting.`
    : `${pace}: ${seconds(-reserve)} too slow, the plan cannot be met by this line, whatever the number of carriers.`
}

/** The law's terms and knees, marked exact or estimate. */
export function lawSentences({ line }: Scenario, facts: LineFacts, windowWords: string, lawSeconds: number): string[] {
  const { law } = facts
  if (law === null) return ['The law of the loop says nothing of this line: it is no single closed loop. Simulate it: loopwright run.']
  const mark = law.exact ? 'exact' : `an estimate: ${law.estimateReasons.join(', ')}`
  const constraint = law.constraintStation === null ? line.zones[law.constraintZone]!.name : line.stations[law.constraintStation]!.name
  const terms = `Law of the loop (${mark}): one lap of a carrier alone ${seconds(law.lapSeconds)}, slowest exchange ${seconds(law.exchangeSeconds)} (${constraint}), one lap of a hole ${seconds(law.holeLapSeconds)}.`
  const { carriersLow: low, carriersHigh: high } = law
  const knees =
    low === null || high === null
      ? []
      : low <= high
        ? [
            `Below ${low} carriers the loop is carrier-limited, from ${low} to ${high} station-limited, above ${high} space-limited; first try ${Math.round((low + high) / 2)}.`,
          ]
        : [
            `There are too few zones for the stations to set the pace: up to about ${high} carriers the loop is carrier-limited, from about ${low} on space-limited.`,
          ]
  const terms12 = lawTerms(law, line.carriers.count)
  const now = `With ${plural(line.carriers.count, 'carrier')} it is ${terms12.regime}: ${formatNumber(terms12.rate * law.unitsPerLap * 3600, 1)} units per hour at work, ${formatNumber(Math.floor(terms12.rate * lawSeconds + 1e-9), 0)} in ${windowWords} without stops${law.exact ? '' : ' and without chance'}.`
  return [terms, ...knees, now]
}

/** The stations with their mean times; the slowest exchange is marked. */
export function stationsTable(facts: LineFacts): Table {
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const left = (head: string) => ({ head, align: 'left', pageOnly: false }) as const
  return {
    caption: 'Stations',
    columns: [
      left('Station'),
      left('Zone'),
      left('Duties'),
      right('Work,\nmean s'),
      right('Release,\ns'),
      right('Move and\nclear, s'),
      right('Exchange,\ns'),
    ],
    rows: facts.stations.map((station, index) => ({
      cells: [
        stationName(station.name, station.title),
        station.zone,
        station.duties.join(', '),
        formatNumber(station.workSeconds, 1),
        formatNumber(station.releaseSeconds, 1),
        station.moveAndClearSeconds === null ? '–' : formatNumber(station.moveAndClearSeconds, 1),
        station.exchangeSeconds === null ? '–' : formatNumber(station.exchangeSeconds, 1),
      ],
      marked: index === facts.slowestStation,
    })),
    note: 'Exchange: from one carrier’s start in to the next one’s, from rest, mean over the mix.',
  }
}

export function stopsTable(facts: LineFacts): Table {
  return {
    caption: 'Stops',
    columns: [
      { head: 'Stop', align: 'left', pageOnly: false },
      { head: 'At', align: 'left', pageOnly: false },
      { head: 'Comes on average after', align: 'right', pageOnly: false },
      { head: 'Lasts on average', align: 'right', pageOnly: false },
    ],
    rows: facts.stops.map((stop) => ({
      cells: [
        stop.name,
        stop.at,
        `${formatDuration(stop.timeToFailureSeconds)} ${stop.clock === 'operating' ? 'of operation' : 'by the clock'}`,
        formatDuration(stop.repairSeconds),
      ],
      marked: false,
    })),
    note: null,
  }
}

export function variantsTable(facts: LineFacts): Table {
  return {
    caption: 'Products',
    columns: [
      { head: 'Variant', align: 'left', pageOnly: false },
      { head: 'Share, %', align: 'right', pageOnly: false },
    ],
    rows: facts.variants.map(({ name, share }) => ({ cells: [name, formatNumber(share * 100, 2)], marked: false })),
    note: null,
  }
}
