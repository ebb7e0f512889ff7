/** The answer of a carrier sweep or study in sentences: the plan first, then the count that is enough, each with its uncertainty in the same breath. */
import { capital, formatNumber, formatShare } from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import type { PlanAnswer, PlanVerdict, SweepAnswer, SweepCount, SweepResult } from '@loopwright/study'
import { controlSentence } from '../words/controlWords.ts'
import { counted } from '../words/countedWords.ts'
import { intervalCaution } from '../words/intervalWords.ts'
import { chanceWords, FEW, planSentence, planText } from '../words/planWords.ts'
import { unitsOf } from '../words/unitWords.ts'
import { countWords as words } from './countWords.ts'
import type { Period } from './period.ts'

/** What of a sweep the words look at. */
export type AnsweredSweep = Pick<SweepResult, 'answer' | 'counts' | 'planAnswer' | 'chance'>

/** what runs until a question is settled */
const MORE = '`loopwright carriers` runs as many as it takes.'

/** The sentences of the answer: which count meets the plan, then which is enough for nearly the best output, and what one fewer would mean. */
export function answerSentences(result: AnsweredSweep, period: Period, more: string = MORE): string[] {
  const { answer, counts, planAnswer } = result
  if (answer === null) return [`No answer yet: every count needs at least 2 simulated ${period.many}, and some have fewer.`]
  if (counts.every((count) => count.units.every((made) => made === 0))) return ['No count tried makes anything.']
  if (counts.length === 1) return oneCountSentences(counts[0]!, period)
  const plan = period.plan === null || planAnswer === null ? [] : planSentences(period.plan, planAnswer, counts, period, more)
  // a plan that only counts with a standstill meet says already that none is recommended
  if (plan.length > 0 && answer.chosen === null && counts.every(({ gridlocks }) => gridlocks > 0)) return plan
  return [...plan, ...enoughSentences(answer, counts, period, planAnswer?.carriers ?? planAnswer?.about ?? null, more)]
}

/** One count alone: the plan, then the output. */
export function oneCountSentences(count: SweepCount, period: Period): string[] {
  const plan = period.plan === null || count.planVerdict === null ? [] : [planSentence(period.plan, count.planVerdict, period)]
  return count.gridlocks > 0 ? [...plan, standsSentence(count, period)] : [...plan, outputSentence(count, period)]
}

/** "With 10 carriers the loop makes 330 units a shift on average; nine of ten shifts make at least 316." */
export function outputSentence(count: SweepCount, period: Period): string {
  const { mean, p10 } = words(count)
  const made = `With ${carriersText(count.carriers)} the ${period.line} makes ${unitsOf(mean)} ${period.each}`
  if (isFixed(count)) return `${made}, the same in every ${period.one} simulated.`
  return p10 === null ? `${made} on average.` : `${made} on average; nine of ten ${suchMany(period)} make at least ${p10}.`
}

/** A count of which some runs stand still is told as that: no mean of both kinds of runs. */
function standsSentence({ carriers, gridlocks, replications, moving }: SweepCount, { line, each }: Period): string {
  const stood = `With ${carriersText(carriers)} the ${line} stood still for good (gridlock) in ${gridlocks === replications ? (replications === 1 ? 'the run' : `all ${formatNumber(replications, 0)} runs`) : `${formatNumber(gridlocks, 0)} of ${formatNumber(replications, 0)} runs`}`
  if (moving === null || moving.replications === 0) return `${stood}.`
  const made =
    moving.mean === null
      ? `${formatNumber(moving.low ?? 0, 0)} to ${formatNumber(moving.high ?? 0, 0)}`
      : `${formatNumber(moving.mean.mean, 0)} units ${each} on average`
  return `${stood}; the other${moving.replications === 1 ? '' : ` ${formatNumber(moving.replications, 0)}`} made ${made}.`
}

/** All windows are the same: nothing is left to chance. */
export const isFixed = (count: Pick<SweepCount, 'units'>): boolean =>
  count.units.length > 0 && count.units.every((made) => made === count.units[0])

/** Which count meets the plan in nine of ten windows, how surely, and what its neighbours do. */
function planSentences(
  plan: number,
  { carriers, about, open, best, counts: told }: PlanAnswer,
  counts: readonly SweepCount[],
  period: Period,
  more: string,
): string[] {
  const wanted = `the plan of ${planText(plan)}`
  const of = (count: number | null): PlanVerdict | undefined => told.find((each) => each.carriers === count)
  const [met, near] = [of(carriers), of(about)]
  const found = near ?? met
  if (found !== undefined) {
    return [
      `${meetsSentence(found, wanted, period)} ${neighbours(found.carriers, told)}`.trim(),
      ...(near !== undefined && met !== undefined ? [meetsSentence(met, wanted, period)] : []),
      ...openSentence(
        told.filter(({ carriers: each, share }) => each < found.carriers && open.includes(each) && share >= LIKELY),
        period,
      ),
    ]
  }
  const nearest = of(best)
  const still = standsStill(counts, nearest)
  if (still.length > 0) {
    const others = counts.filter(({ gridlocks }) => gridlocks === 0)
    const fewer =
      others.length === 0 ? '' : `, and with ${listWords(others.map((each) => formatNumber(each.carriers, 0)))} it was never met`
    return [
      `No count tried meets ${wanted} and keeps moving: with ${listWords(still.map((each) => formatNumber(each.carriers, 0)))} carriers some runs stood still for good (gridlock)${fewer}.`,
    ]
  }
  if (nearest === undefined) {
    const moving = counts.filter(({ gridlocks }) => gridlocks === 0)
    const most = (moving.length === 0 ? counts : moving).reduce((top, count) =>
      (count.mean?.mean ?? 0) > (top.mean?.mean ?? 0) ? count : top,
    )
    return [
      `No count tried meets ${wanted} in any of the ${period.many} simulated. The most is made with ${carriersText(most.carriers)}: ${unitsOf(words(most).mean)} ${period.each}${isFixed(most) ? '' : ' on average'}. ${HELP}`,
    ]
  }
  if (nearest.verdict === 'open') {
    const { successes, n, low, high } = nearest
    const few = n < FEW ? 'too few to promise anything' : `the chance is between ${formatShare(low)} and ${formatShare(high)}`
    return [
      `No count is shown yet to meet ${wanted} in nine of ten ${period.many}. With ${carriersText(nearest.carriers)} it was met in ${successes === n ? 'all' : `${formatNumber(successes, 0)} of`} ${formatNumber(n, 0)} simulated; ${few}. ${more}`,
    ]
  }
  return [
    `No count tried meets ${wanted} in nine of ten ${period.many}; the best chance is with ${carriersText(nearest.carriers)} (${chanceWords(nearest)}). ${HELP}`,
  ]
}

/** Counts that meet the plan in some runs and stand still in others, where no count that keeps moving ever meets it. */
function standsStill(counts: readonly SweepCount[], nearest: PlanVerdict | undefined): SweepCount[] {
  const still = counts.filter(({ gridlocks }) => gridlocks > 0)
  const some = still.some(({ meetsPlan }) => (meetsPlan?.successes ?? 0) > 0)
  return some && (nearest === undefined || nearest.stoodStill > 0) ? still : []
}

/** a share from which on more replications may turn "open" into "met" */
const LIKELY = 0.8
const HELP = '`loopwright drivers` says what would help most.'

/** "12 carriers meet the plan of 320 in about nine of ten shifts (90 %, 88 to 92)." */
function meetsSentence(found: PlanVerdict, wanted: string, { many }: Period): string {
  const who = `${capital(carriersText(found.carriers))} ${found.carriers === 1 ? 'meets' : 'meet'} ${wanted}`
  if (found.method === 'no chance') return `${who} always: all ${many} are the same.`
  if (found.share === 1) return `${who} in all ${formatNumber(found.n, 0)} ${many} simulated (${chanceWords(found)}).`
  return `${who} in ${found.verdict === 'met' ? 'more than' : 'about'} nine of ten ${many} (${chanceWords(found)}).`
}

/** What one more and one fewer do: "With 12 it is 90 %, with 10 it is 87 %." */
function neighbours(carriers: number, told: readonly PlanVerdict[]): string {
  const of = (count: number): string[] => {
    const found = told.find((each) => each.carriers === count)
    if (found === undefined) return []
    if (found.stoodStill > 0) return [`with ${count} runs stand still`]
    return [
      `with ${count} it is ${found.method === 'no chance' ? (found.share === 1 ? 'met too' : 'not met') : `met in ${found.share === 1 ? 'all' : found.share === 0 ? 'none' : formatShare(found.share)}`}`,
    ]
  }
  const parts = [...of(carriers + 1), ...of(carriers - 1)]
  return parts.length === 0 ? '' : `${capital(parts.join(', '))}.`
}

function openSentence(open: readonly PlanVerdict[], { many }: Period): string[] {
  if (open.length === 0) return []
  const counts = open.map(({ carriers, successes, n }) => `${carriers} (${formatNumber(successes, 0)} of ${formatNumber(n, 0)} ${many})`)
  return [`Whether ${listWords(counts)} ${open.length === 1 ? 'does' : 'do'} too takes more ${many} to say.`]
}

/**
 * Which count is enough for nearly the best output, by which rule, and why not one fewer.
 *
 * @param met  the count that meets the plan; null: none
 */
function enoughSentences(answer: SweepAnswer, counts: readonly SweepCount[], period: Period, met: number | null, more: string): string[] {
  const { best, chosen, notConfirmed } = answer
  const within = formatShare(answer.within)
  if (chosen === null) return [noCountSentence(answer, counts, more)]
  const count = countOf(counts, chosen)
  const { mean, p10 } = words(count)
  const fixed = counts.every(isFixed)
  const makes = `${unitsOf(mean)} ${period.each}${fixed ? '' : ' on average'}`
  const spread = fixed || p10 === null ? '' : `; nine of ten ${suchMany(period)} make at least ${p10}`
  const sure = fixed ? '' : `, with ${formatShare(answer.level)} confidence`
  const rule = chosen === best ? 'the most of all counts tried' : `within ${within} of the best count tried (${best})${sure}`
  const first =
    met === chosen
      ? `The same count is enough for nearly the best output: ${makes}, ${rule}${spread}.`
      : `${capital(carriersText(chosen))} ${chosen === 1 ? 'is' : 'are'} enough for nearly the best output: ${makes}, ${rule}${spread}.`
  return [first, ...fewerSentence(notConfirmed, answer, counts, period)]
}

/** Why the answer is not one fewer. */
function fewerSentence(
  notConfirmed: SweepAnswer['notConfirmed'],
  { chosen, within }: SweepAnswer,
  counts: readonly SweepCount[],
  period: Period,
): string[] {
  if (notConfirmed === null) return chosen === 1 ? [] : [`${chosen} is also the smallest count tried: fewer may do as well.`]
  const fewer = notConfirmed.carriers
  if (notConfirmed.reason === 'gridlock')
    return [
      `${capital(carriersText(fewer))} ${fewer === 1 ? 'is' : 'are'} not recommended: the ${period.line} stood still in ${runsOf(counts, fewer)} runs (gridlock).`,
    ]
  // the study tells what is missing to the border, a share below the other count; a reader wants all that is missing
  const { mean } = countOf(counts, notConfirmed.against)
  const by = `by up to ${shortfall(notConfirmed.shortBy + within * (mean?.mean ?? 0))} units ${period.each}`
  const border = `the best by more than ${formatShare(within)}`
  return [
    notConfirmed.shown
      ? `${capital(carriersText(fewer))} ${fewer === 1 ? 'falls' : 'fall'} short of ${border}: ${by}.`
      : `${capital(carriersText(fewer))} may fall short of ${border}: ${by}.`,
  ]
}

/** Of the runs of a count that stood still: all of them, or some. */
function runsOf(counts: readonly SweepCount[], carriers: number): 'all' | 'some' {
  const { gridlocks, replications } = countOf(counts, carriers)
  return gridlocks === replications ? 'all' : 'some'
}

function noCountSentence({ within, notConfirmed }: SweepAnswer, counts: readonly SweepCount[], more: string): string {
  if (notConfirmed?.reason === 'gridlock') {
    return `No count is recommended: with ${carriersText(notConfirmed.carriers)}, where the search began, the line stood still in ${runsOf(counts, notConfirmed.carriers)} runs (gridlock).`
  }
  return `These runs do not settle which count comes within ${formatShare(within)} of the best. ${more}`
}

/**
 * What more replications would narrow, and what they would not.
 *
 * @param carriers  the count that the answer speaks of first
 */
export function sureSentences({ answer, counts, chance }: AnsweredSweep, carriers: number, period: Period): string[] {
  if (answer === null) return []
  const count = countOf(counts, carriers)
  if (!chance)
    return [
      `No time, stop or mix of this ${period.line} is left to chance: one run ${counts.length === 1 ? '' : 'of each count '}tells all, and there are no intervals.`,
    ]
  if (isFixed(count))
    return [`All ${formatNumber(count.replications, 0)} ${period.many} simulated make the same: chance does not reach this number.`]
  if (count.mean === null || count.gridlocks > 0) return []
  const { mean, halfWidth, low, high } = words(count)
  const of = counts.length === 1 ? '' : ` with ${carriersText(count.carriers)}`
  const known = `Average output per ${period.one}${of}: ${mean}, known to ± ${halfWidth} (${formatShare(count.mean.level)}) from ${formatNumber(count.replications, 0)} ${period.many}. More simulated ${period.many} narrow this.${controlSentence(count, period)}${intervalCaution(count.mean)}`
  return low === null || high === null
    ? [known]
    : [
        known,
        `A single ${period.one}: ${low} to ${high} in 95 of 100. More of them do not narrow this; it is how much ${period.many} differ.`,
      ]
}

function countOf(counts: readonly SweepCount[], carriers: number): SweepCount {
  const found = counts.find((count) => count.carriers === carriers)
  if (found === undefined) throw new RangeError(`no count of ${carriers} carriers in this sweep`)
  return found
}

/** "1 carrier", "10 carriers" */
export function carriersText(carriers: number): string {
  return counted(carriers, 'carrier')
}

const suchMany = ({ one, many }: Period): string => (one === 'shift' ? many : `such ${many}`)
const shortfall = (shortBy: number): string => formatNumber(shortBy, shortBy < 10 ? 1 : 0)
