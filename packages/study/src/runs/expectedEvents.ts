import { completeLine, derivedTimes, type GivenLine, type LineSpec } from '@loopwright/line'
import { type Law, lawOrNull } from '@loopwright/line/bounds'
import { type Distribution, distributionMean } from '@loopwright/stats'
import { expectedMoves } from './expectedMoves.ts'

/** Events of a move: it ends, the zone behind it is clear, and about every second one begins or ends a piece of work. */
const EVENTS_PER_MOVE = 3

/** seconds, the tick of the clock: nothing comes more often */
const TICK = 2 ** -20

/** nanoseconds of a core for an event of a line that has something of everything, about */
const NANOSECONDS = 100

/** As many events as take about an hour of a core: more are run only if that is said to be meant. */
const EVENTS_MAX = (3600 * 1e9) / NANOSECONDS

/** One run of the largest lines of people has fewer: with more, some time of a stop or of arrivals is most likely not what was meant. */
const RUN_EVENTS_MAX = 1e8

/**
 * Events that one run of a line with its own number of carriers takes, about, where that is more than people's lines have; else null.
 *
 * @example tooManyEvents(line) // => null
 */
export function tooManyEvents(given: GivenLine): number | null {
  const spec = completeLine(given)
  const events = expectedEvents(spec, lawOrNull(spec), spec.carriers.count)
  return events > RUN_EVENTS_MAX ? events : null
}

/**
 * How many events that are, and how long they take.
 *
 * @example eventWords(4e9) // => '4·10⁹ events, 6.7 minutes of a core'
 */
export function eventWords(events: number): string {
  const seconds = (events * NANOSECONDS) / 1e9
  const [time, unit] = seconds < 100 ? [seconds, 's'] : seconds < 3600 ? [seconds / 60, 'minutes'] : [seconds / 3600, 'hours']
  return `${rounded(events)} events, ${rounded(time)} ${unit} of a core`
}

/**
 * Events that one run takes, about, and rather more: moves without waiting for each other, arrivals, and stops with their ends.
 *
 * @param law       of the line; null: it has none
 * @param carriers  count, ≥ 1
 */
export function expectedEvents(spec: LineSpec, law: Law | null, carriers: number): number {
  const end = spec.window.endSeconds
  const moves = law === null ? (carriers * end) / meanMoveSeconds(spec) : expectedMoves(spec, law, carriers)
  const times = (seconds: number): number => end / Math.max(seconds, TICK)
  let events = EVENTS_PER_MOVE * moves
  for (const { arrivals } of [spec.supply, ...spec.stations.flatMap(({ supply }) => supply ?? [])])
    if (arrivals.kind === 'every') events += times(distributionMean(arrivals.seconds))
  for (const { timeToFailureSeconds, repairSeconds } of spec.breakdowns)
    events += 2 * times(distributionMean(timeToFailureSeconds) + distributionMean(repairSeconds))
  return events
}

function meanMoveSeconds(spec: LineSpec): number {
  const { move } = derivedTimes(spec)
  const seconds = spec.paths.map(({ moveSeconds }, p) => mean(moveSeconds, move[4 * p]!))
  return Math.max(TICK, seconds.reduce((sum, each) => sum + each, 0) / Math.max(1, seconds.length))
}

const mean = (given: Distribution | null, derived: number): number => (given === null ? derived : distributionMean(given))

/**
 * @param least  the study decides as it goes how much it runs, and asks for no less than these events. Default: it asks for these
 * @throws RangeError  if a study asks for more than `EVENTS_MAX`
 */
export function needsFewEvents(events: number, least = false): void {
  if (!(events > EVENTS_MAX)) return
  throw new RangeError(
    `this asks for ${least ? 'at least' : 'about'} ${eventWords(events)}: look at the shortest times of stops and arrivals, take fewer replications or a shorter window, or say that it is meant (--yes)`,
  )
}

/** In two digits; powers of ten where that is shorter. */
function rounded(value: number): string {
  const two = Number(value.toPrecision(2))
  if (two < 1e6) return `${two}`
  const power = Math.floor(Math.log10(two))
  return `${Number((two / 10 ** power).toPrecision(2))}·10${[...`${power}`].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('')}`
}
