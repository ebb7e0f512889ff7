/** What is assumed about breakdowns, short stops, breaks and the stretch of time that is judged. */
import type { Table } from '@loopwright/charts/table'
import { type BreakdownPart, type LineSpec, listWords, stationWords } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { distributionWords } from './distributionWords.ts'
import { secondsText, shortNumber } from './quantityWords.ts'
import { listTable, textTable } from './rows.ts'

/** null where nothing breaks down */
export function stopInputs(line: LineSpec): Table | null {
  if (line.breakdowns.length === 0) return null
  const rows = line.breakdowns.map((source) => [
    source.name,
    partWords(line, source.part),
    source.clock === 'operating' ? 'while it works' : 'always',
    distributionWords(source.timeToFailureSeconds),
    distributionWords(source.repairSeconds),
  ])
  return textTable(
    'Breakdowns and short stops',
    ['Cause', 'Part', 'Clock runs', 'Time to failure', 'Lasts'],
    ['Part', 'Clock runs', 'Time to failure', 'Lasts'],
    rows,
    null,
  )
}

export function timeInputs(scenario: Scenario): Table {
  const { line, calendar, plan } = scenario
  const { warmupSeconds, endSeconds } = line.window
  const rows: [string, string][] = []
  if (calendar !== null) {
    const shifts = calendar.shifts === 1 ? calendar.judged : `${calendar.judged} (${calendar.shifts} shifts)`
    rows.push(['Judged', shifts], ['Shift, gross', minutes(calendar.grossSeconds)], ['Shift, net of breaks', minutes(calendar.netSeconds)])
  }
  rows.push([
    'Counted from … to',
    `${minutes(warmupSeconds)} … ${minutes(endSeconds)} after the start, ${minutes(endSeconds - warmupSeconds)}`,
  ])
  rows.push([
    'Before that',
    warmupSeconds > 0 ? `${minutes(warmupSeconds)} that fill the line and are not counted` : 'nothing: counted from an empty line on',
  ])
  const inside = line.breaks.filter((pause) => pause.startSeconds >= warmupSeconds && pause.startSeconds < endSeconds)
  rows.push([
    'Breaks counted',
    inside.length === 0
      ? 'none'
      : inside.map((pause) => `${minutes(pause.lengthSeconds)} after ${minutes(pause.startSeconds - warmupSeconds)}`).join('; '),
  ])
  if (line.breaks.length > 0) rows.push(['Conveyor during breaks', line.conveyorDuringBreaks ? 'runs' : 'stands'])
  if (plan !== null) {
    rows.push(['Plan', `${shortNumber(plan.units)} per ${plan.per}`])
    if (plan.per !== 'shift') rows.push(['Plan in the time counted', `${shortNumber(plan.unitsPerWindow)} units`])
  }
  if (calendar?.taktSeconds != null) rows.push(['Takt', `${secondsText(calendar.taktSeconds)} (net time over plan)`])
  return listTable('Time and plan', rows)
}

function minutes(seconds: number): string {
  return `${shortNumber(seconds / 60, 6)} min`
}

/** zones of a section that are all named */
const ZONES_MAX = 4

const zonesWords = (names: readonly string[]): string =>
  names.length <= ZONES_MAX ? `zones ${listWords(names)}` : `${names.length} zones, ${names[0]} … ${names.at(-1)}`

function partWords(line: LineSpec, part: BreakdownPart): string {
  switch (part.kind) {
    case 'station': {
      const station = line.stations[part.index]
      return station === undefined ? '' : stationWords(station)
    }
    case 'zone':
      return `zone ${line.zones[part.index]?.name ?? ''}`
    case 'transfer':
      return `transfer ${line.zones[part.index]?.name ?? ''}`
    case 'section': {
      const held = line.sections[part.index]?.zones ?? []
      return held.length === line.zones.length ? 'the whole line' : zonesWords(held.map((zone) => line.zones[zone]?.name ?? ''))
    }
  }
}
