/** What was understood of a scenario, in plain words. */
import { formatDuration, formatNumber } from '@loopwright/charts/table'
import { STORE } from '@loopwright/line'
import type { LineFacts } from '@loopwright/study/change'
import type { Scenario, ScenarioNotes } from '@loopwright/scenario'
import { metresText } from '../inputs/quantityWords.ts'
import { lineNoun, period } from '../sweep/period.ts'
import { clockText } from '../words/clockWords.ts'
import { counted } from '../words/countedWords.ts'
import { planText } from '../words/planWords.ts'

/** "“Lid line” (line.yaml) can be simulated: no errors, no warnings." */
export function verdictSentence({ name }: Pick<Scenario, 'name'>, file: string, warnings: number): string {
  const of = name === '' ? file : `“${name}” (${file})`
  return `${of} can be simulated: no errors, ${warnings === 0 ? 'no warnings' : counted(warnings, 'warning')}.`
}

/** "Loop: 22 zones, 33 m; a carrier may wait in 18 of them. 4 transfers (Z09, Z11, Z20, Z22), entered only when the exit is clear." */
export function lineSentence({ line }: Pick<Scenario, 'line'>, facts: LineFacts): string {
  const { transfers, exitClearTransfers } = facts
  const waits = line.zones.length - exitClearTransfers.length
  const wait = `carrier may wait in ${waits === line.zones.length ? 'each' : formatNumber(waits, 0)}`
  const zones = [counted(line.zones.length, 'zone'), ...(facts.loopMetres === null ? [] : [metresText(facts.loopMetres)])]
  const noun = lineNoun(line)
  const said =
    noun === 'loop'
      ? `Loop: ${zones.join(', ')}; a ${wait} of them.`
      : `${noun === 'line' ? 'Line' : 'Open line'}: ${[...zones, counted(line.paths.length, 'path')].join(', ')}${storeWords(line)}. A ${wait} of the zones.`
  if (transfers.length === 0) return `${said} No transfers.`
  const clear =
    exitClearTransfers.length === 0
      ? ''
      : exitClearTransfers.length === transfers.length
        ? ', entered only when the exit is clear'
        : `; entered only when the exit is clear: ${exitClearTransfers.join(', ')}`
  return `${said} ${counted(transfers.length, 'transfer')} (${transfers.join(', ')})${clear}.`
}

/** Where carriers come from and go to; empty where they stay on the line. */
function storeWords({ paths }: Scenario['line']): string {
  const goes = paths.some(({ to }) => to === STORE)
  if (paths.some(({ from }) => from === STORE)) return `; carriers come from a store${goes ? ' and go back to it' : ''}`
  return goes ? '; carriers leave to a store' : ''
}

/** How the zones are called where the file gives no names: they name random streams and stand in tables. Null where it names all. */
export function zoneNamesSentence(notes: Pick<ScenarioNotes, 'generatedZoneNames' | 'zoneNames'>): string | null {
  const made = notes.generatedZoneNames
  if (made.length === 0) return null
  const names = made.length <= 3 ? made.join(', ') : `${made[0]} … ${made.at(-1)}`
  return made.length === notes.zoneNames.length ? `The zones are called ${names}.` : `Zones without a name in the file are called ${names}.`
}

/** "12 carriers, 1.2 m long and 1.2 m wide, spread evenly at the start." */
export function carriersSentence({ line }: Pick<Scenario, 'line'>): string {
  const { count, lengthMetres, widthMetres, start } = line.carriers
  const size = [
    ...(lengthMetres === null ? [] : [`${metresText(lengthMetres)} long`]),
    ...(widthMetres === null ? [] : [`${metresText(widthMetres)} wide`]),
  ].join(' and ')
  return `${[counted(count, 'carrier'), ...(size === '' ? [] : [size]), startWords(start)].join(', ')}.`
}

function startWords(start: Scenario['line']['carriers']['start']): string {
  switch (start) {
    case 'spread':
      return 'spread evenly at the start'
    case 'packed':
      return 'packed from the first zone on at the start'
    case 'store':
      return 'in the store at the start'
    default:
      return 'each at its named zone at the start'
  }
}

/** What is counted, and for how long: with a calendar, by its hours. */
export function windowSentence(scenario: Scenario, { shiftStarts }: Pick<ScenarioNotes, 'shiftStarts'>): string {
  const { line, calendar, plan } = scenario
  const { warmupSeconds, endSeconds } = line.window
  const length = formatDuration(endSeconds - warmupSeconds)
  const { named } = period(scenario)
  const [from, to] = [clockText(shiftStarts, warmupSeconds), clockText(shiftStarts, endSeconds, true)]
  const hours = named === null || from === null || to === null ? '' : `, ${from} to ${to}`
  const netSeconds = calendar === null ? endSeconds - warmupSeconds : calendar.netSeconds * calendar.shifts
  const net = netSeconds < endSeconds - warmupSeconds ? `, ${formatDuration(netSeconds)} without breaks` : ''
  const what = calendar === null ? `${length} ` : `${named ?? calendar.judged}${hours} (${length}${net}), `
  const warm = warmupSeconds === 0 ? 'from the start of the run on' : `after ${formatDuration(warmupSeconds)} of warm-up`
  const wanted = plan === null ? 'No plan is given.' : `The plan is ${planText(plan.units)} per ${plan.per}.`
  return `Counted: ${what}${warm}. ${wanted}`
}

/** "Observed times: 40 of 120 rows of the column wiring of study.csv (78 others left out, 2 without a time)." Null where no file is read. */
export function tablesSentence({ tables }: Pick<ScenarioNotes, 'tables'>): string | null {
  if (tables.length === 0) return null
  const each = tables.map(({ file, column, rows, taken, others, empty }) => {
    const left = [...(others === 0 ? [] : [`${others} others left out`]), ...(empty === 0 ? [] : [`${empty} without a time`])]
    return `${taken === rows ? `all ${counted(rows, 'row')}` : `${taken} of ${counted(rows, 'row')}`} of the column ${column} of ${file}${left.length === 0 ? '' : ` (${left.join(', ')})`}`
  })
  return `Observed times: ${each.join('; ')}.`
}

/** The breaks of the judged stretch, and whether the conveyor goes on; null where there are none. */
export function breaksSentence({ line }: Pick<Scenario, 'line'>, { shiftStarts }: Pick<ScenarioNotes, 'shiftStarts'>): string | null {
  const { warmupSeconds, endSeconds } = line.window
  const judged = line.breaks.filter(
    ({ startSeconds, lengthSeconds }) => startSeconds < endSeconds && startSeconds + lengthSeconds > warmupSeconds,
  )
  if (judged.length === 0) return null
  const each = judged.map(({ startSeconds, lengthSeconds }) => {
    const clock = clockText(shiftStarts, startSeconds)
    return `${formatDuration(lengthSeconds)} ${clock === null ? `after ${formatDuration(Math.max(0, startSeconds - warmupSeconds))}` : `at ${clock}`}`
  })
  const times = new Map<string, number>()
  for (const one of each) times.set(one, (times.get(one) ?? 0) + 1)
  const told = [...times].map(([one, count]) => (count === 1 ? one : `${count} times ${one}`))
  return `${each.length === 1 ? 'Break' : 'Breaks'} in it: ${told.join(', ')}; the conveyor ${line.conveyorDuringBreaks ? 'goes on' : 'stops too'}.`
}

/** Named sets of changed values in the file; null where there are none. */
export function variationsSentence({ variations }: Pick<ScenarioNotes, 'variations'>): string | null {
  return variations.length === 0 ? null : `Variations in the file: ${variations.join(', ')}.`
}
