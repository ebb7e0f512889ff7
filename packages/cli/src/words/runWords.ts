/** What runs of one line tell, in sentences. */
import { formatDuration, formatNumber } from '@loopwright/charts'
import type { LineSpec, RunResult } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { type Standstill, standstillOf } from '@loopwright/study'

/** Names in one row before "and so on". */
const NAMES_MAX = 12

/** What the numbers of a run count for: the judged shift, or the window. */
export function windowWords({ calendar }: Pick<Scenario, 'calendar'>): string {
  return calendar === null ? 'the window' : `the ${calendar.judged}`
}

/** "In this run 12 carriers made 333 units in the second shift, 39.9 per clock hour. The plan of 320 was met." */
export function runSentences(scenario: Scenario, run: RunResult): string[] {
  const { line, plan } = scenario
  const carriers = line.carriers.count
  const made = `In this run ${carriers} ${carriers === 1 ? 'carrier' : 'carriers'} made ${units(run.output)} in ${windowWords(scenario)}, ${formatNumber(run.outputPerHour, 1)} per clock hour.`
  const sentences = [plan === null ? made : `${made} ${planSentence(run.output, plan.unitsPerWindow)}`]
  sentences.push(...goodsSentences(run))
  const end = endSentence(run.end, line)
  return end === null ? sentences : [end, ...sentences]
}

/** Rejected products, and products that came in vain; nothing where there are none. */
function goodsSentences({ rejections, rejectedTakenOff, supplies }: RunResult): string[] {
  const off =
    rejectedTakenOff === 0
      ? ''
      : ` ${units(rejectedTakenOff)} left the line rejected, and ${rejectedTakenOff === 1 ? 'is' : 'are'} no output.`
  const rejected = rejections === 0 ? [] : [`Inspections rejected ${formatNumber(rejections, 0)} times.${off}`]
  const away = supplies.filter(({ turnedAway }) => turnedAway > 0)
  return [
    ...rejected,
    ...away.map(
      ({ name, arrivals, turnedAway }) =>
        `Of ${formatNumber(arrivals, 0)} products that came to ${name === 'supply' ? 'the line' : name}, ${formatNumber(turnedAway, 0)} found the queue full and were turned away.`,
    ),
  ]
}

function planSentence(output: number, plan: number): string {
  const wanted = formatNumber(plan, Number.isInteger(plan) ? 0 : 1)
  return output >= plan ? `The plan of ${wanted} was met.` : `The plan of ${wanted} was missed by ${units(Math.ceil(plan - output))}.`
}

/** Why a run stood still before its end, and where; null where it did not. */
export function endSentence(end: RunResult['end'], line: LineSpec): string | null {
  if (end.reason === 'end of window' || end.atSeconds === null) return null
  const at = formatDuration(end.atSeconds)
  if (end.reason === 'out of products') return `OUT OF PRODUCTS after ${at}: the list of products has run out, and nothing more was made.`
  const names = end.cycle.map((zone) => line.zones[zone]!.name)
  const circle = names.length === 0 ? '' : ` These zones wait for each other in a circle: ${shortList(names)}.`
  return `GRIDLOCK after ${at}: the line stood still, and nothing more was made.${circle} ${reasonSentence(standstillOf(line, end)!, line, deadEnds(end))}`
}

/** Zones that are waited for and wait for nothing: a carrier there has no way on. */
function deadEnds({ waits }: RunResult['end']): number[] {
  const waiting = new Set(waits.map(([zone]) => zone))
  return [...new Set(waits.map(([, ahead]) => ahead))].filter((zone) => !waiting.has(zone))
}

const shortNames = (zones: readonly number[], line: LineSpec): string => {
  const names = zones.slice(0, NAMES_MAX).map((zone) => line.zones[zone]!.name)
  return names.length < zones.length ? `${names.join(', ')} and ${zones.length - names.length} more` : names.join(', ')
}

/** The plain reason, and what would mend it; beside a circle also who waits for operators. */
function reasonSentence(standstill: Standstill, line: LineSpec, dead: readonly number[]): string {
  const { reason, merge, unmanned } = standstill
  const nobody = unmanned.length === 0 ? '' : ` ${nobodySentence(standstill, line)}`
  if (reason === 'too many carriers')
    return `There are too many carriers: every place to stand on the way round is taken. Fewer carriers, or an exit that is kept clear, would let it go on.${nobody}`
  if (reason === 'merge fills its own exit') {
    const name = line.zones[merge!]!.name
    return `${name}, where two ways meet, fills its own exit: what came in there waits for a zone that waits for it. Fewer carriers, or right of way at ${name} for those that leave the circle, may let it go on.${nobody}`
  }
  if (reason === 'no way on')
    return `No zones wait in a circle: ${dead.length === 0 ? 'some carrier' : `the carrier in ${shortNames(dead, line)}`} has no way on, so that those behind it wait for ever. See that each zone has a way out for every carrier that comes there.`
  return nobodySentence(standstill, line)
}

/** Who is waited for in vain: a station that needs more than cover it, else operators bound where they wait for others. */
function nobodySentence({ unmanned, understaffed }: Standstill, line: LineSpec): string {
  const names = (zones: readonly number[]): string => zones.map((zone) => line.zones[zone]!.name).join(', ')
  if (understaffed.length === 0)
    return `Operators wait for each other: whom the work or push at ${names(unmanned)} needs is bound to a station that waits for somebody else. Let more operators cover it, or need fewer.`
  const stations = understaffed.map((zone) => {
    const index = line.stations.findIndex((station) => station.zone === zone)
    const covering = line.operators.filter((operator) => operator.stations.includes(index)).length
    return `${line.zones[zone]!.name} needs ${line.stations[index]!.operatorsNeeded} operators, and ${covering} ${covering === 1 ? 'covers' : 'cover'} it`
  })
  const others = unmanned.filter((zone) => !understaffed.includes(zone))
  const more = others.length === 0 ? '' : ` ${names(others)} ${others.length === 1 ? 'waits' : 'wait'} for somebody who is bound so.`
  return `An operator waits for himself: the work at ${stations.join('; at ')}.${more} Let more operators cover it, or need fewer.`
}

const shortList = (names: readonly string[]): string =>
  names.length <= NAMES_MAX ? names.join(' → ') : `${names.slice(0, NAMES_MAX).join(' → ')} → … (${names.length} zones)`

const units = (count: number): string => `${formatNumber(count, 0)} ${count === 1 ? 'unit' : 'units'}`

/** What one run does not tell. */
export const ONE_RUN =
  'One run is one shift that may happen, not a forecast. Ask for more replications (such as --replications 100) to learn what to expect and how far shifts differ.'
