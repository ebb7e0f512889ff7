/** What limits the rate, as far as mean times tell it: takt against the slowest exchange, and the law of the loop. */
import { capital, formatNumber, formatPerHour, formatSeconds, formatShare } from '@loopwright/charts/table'
import { listWords, stationWords } from '@loopwright/line'
import { lawTerms, type Limit, loadSupplies, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import type { LineFacts } from '@loopwright/study/change'
import { period } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'

/**
 * Takt against the slowest exchange; null without a takt or a station, where something else is slower, and where a lap makes more than one unit.
 *
 * @param constraint  kind of the slowest limit of the line; null: none is known
 */
export function taktSentence({ calendar }: Scenario, facts: LineFacts, constraint: Limit['kind'] | null): string | null {
  const takt = calendar?.taktSeconds ?? null
  if (takt === null || facts.slowestStation === null || (constraint !== null && constraint !== 'station')) return null
  const slowest = facts.stations[facts.slowestStation]!
  if (slowest.exchangeSeconds === null || facts.law === null || Math.abs(facts.law.unitsPerLap - 1) > 1e-9) return null
  const pace = `The plan leaves ${formatSeconds(takt)} of working time for each unit (the takt). The slowest exchange, at ${stationWords(slowest)}, takes ${formatSeconds(slowest.exchangeSeconds)} on average`
  const reserve = takt - slowest.exchangeSeconds
  return reserve >= 0
    ? `${pace}: ${formatSeconds(reserve)} (${formatShare(reserve / takt)}) are left for stops and for waiting.`
    : `${pace}, ${formatSeconds(-reserve)} too long: the plan ${facts.law.exact ? 'cannot be met' : 'is not to be expected'}, whatever the number of carriers.`
}

/** The law's terms and knees, marked exact or estimate. */
export function lawSentences(scenario: Scenario, { law }: LineFacts): string[] {
  const { line } = scenario
  const { named, one } = period(scenario)
  if (law === null) return []
  const mark = law.exact ? 'exact' : `an estimate: ${law.estimateReasons.join(', ')}`
  const station = law.constraintStation === null ? null : line.stations[law.constraintStation]!
  const constraint = station === null ? `zone ${line.zones[law.constraintZone]!.name}` : stationWords(station)
  const terms = `The law of the loop (what mean times alone say of carriers, stations and free zones; ${mark}): one lap of a carrier alone takes ${formatSeconds(law.lapSeconds)}, the slowest exchange ${formatSeconds(law.exchangeSeconds)} (${constraint}), one lap of a free zone against the flow ${formatSeconds(law.holeLapSeconds)}.`
  const { carriersLow: low, carriersHigh: high } = law
  const count = line.carriers.count
  const { regime, rate } = lawTerms(law, count)
  const units = formatNumber(rate * law.unitsPerLap * workingSeconds(line), 0)
  const now = `With ${counted(count, 'carrier')} it is ${regime}: ${formatPerHour(rate * law.unitsPerLap * 3600)} units per working hour, ${units} in ${named ?? `the ${one}`} without stops${law.exact ? '' : ' and without chance'}.`
  return [terms, ...(low === null || high === null ? [] : [kneeSentence(low, high)]), now]
}

/** What the law leaves out of a loop that has it; null where there is nothing of it, or no law. */
export function leftOutSentence({ line }: Pick<Scenario, 'line'>, { law }: Pick<LineFacts, 'law'>): string | null {
  const arrives = loadSupplies(line).some(({ arrivals }) => arrivals.kind !== 'always')
  const left = [
    ...(line.operators.length > 0 ? ['operators who serve several stations'] : []),
    ...(arrives ? ['arrivals'] : []),
    ...(line.stations.some(({ receiver }) => receiver !== null) ? ['receivers'] : []),
    ...(line.inspections.length > 0 ? ['rejected products'] : []),
  ]
  return law === null || left.length === 0 ? null : `The law of the loop leaves out ${listWords(left)}; the limits above have them.`
}

function kneeSentence(low: number, high: number): string {
  if (low > high)
    return `There are too few zones for the stations to set the pace: up to about ${counted(high, 'carrier')} the loop is carrier-limited (too few carriers), from about ${low} on space-limited (too few free zones).`
  const few = low <= 1 ? '' : `below ${counted(low, 'carrier')} the loop is carrier-limited (too few to keep the slowest station busy), `
  const enough = low <= 1 ? `up to ${counted(high, 'carrier')} the loop is` : low === high ? `with ${low}` : `from ${low} to ${high}`
  return `${capital(few + enough)} station-limited, above ${high} space-limited (too few free zones to move into). A first try: ${Math.round((low + high) / 2)}.`
}
