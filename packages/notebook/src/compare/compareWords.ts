/** What a comparison says, in sentences. Names stand in quotation marks, so that a sentence stays one whatever they are. */
import { capital, differenceDecimals, differenceParts, formatNumber, formatShare, roundedParts, withHalf } from '@loopwright/charts/table'
import type { CompareResult } from '@loopwright/study/compare'
import type { AnswerFigure } from '../cells/cell.ts'
import { figureOf, planFigure } from '../sweep/answerFigures.ts'
import type { Period } from '../sweep/period.ts'
import { intervalsCaution } from '../words/intervalWords.ts'
import { FEW, planPhrase, planText } from '../words/planWords.ts'
import { unitsOf } from '../words/unitWords.ts'

export type Difference = CompareResult['pairs'][number]['difference']

/** The numbers of a difference as texts: one rounding, wherever they stand on a page. */
export interface DifferenceWords {
  /** without a sign: "7.8" */
  readonly size: string
  /** "−7.8 ± 1.2"; of a difference that has no chance in it "−7.8" */
  readonly withHalfWidth: string
  /** limits without a sign, the smaller first; of a difference that is not shown: both signed */
  readonly low: string
  readonly high: string
}

export function differenceWords({ mean, halfWidth, low, high, status }: Difference): DifferenceWords {
  const decimals = differenceDecimals(mean, halfWidth)
  const text = (value: number): string => formatNumber(value, decimals)
  const limits = status === 'difference shown' ? [Math.abs(low), Math.abs(high)].sort((a, b) => a - b) : [low, high]
  return {
    size: text(Math.abs(mean)),
    withHalfWidth: withHalf(differenceParts({ mean, halfWidth })),
    low: text(limits[0]!),
    high: text(limits[1]!),
  }
}

/** "“Proposal” makes 7.8 fewer units a shift than “today” (95 %: 6.6 to 9.0)." */
export function differenceSentence(first: string, second: string, difference: Difference, period: Pick<Period, 'each' | 'many'>): string {
  return `${capital(differenceClause(quoted(first), quoted(second), difference, period))}.`
}

/** The same without a full stop, of names as they are: "the chosen order makes 6.3 more units a shift than today’s (95 %: 5.1 to 7.5)". */
export function differenceClause(first: string, second: string, difference: Difference, period: Pick<Period, 'each' | 'many'>): string {
  const { size, low, high } = differenceWords(difference)
  const more = difference.mean > 0 ? 'more' : 'fewer'
  const limits = `${levelWords(difference.level)}: ${low} to ${high}`
  switch (difference.status) {
    case 'identical in every replication':
      return `${first} makes exactly what ${second} makes, in each of the ${period.many} simulated`
    case 'always differs by the same':
      return `${first} makes ${unitsOf(size, more)} ${period.each} than ${second}, in each of the ${period.many} simulated`
    case 'difference shown':
      return `${first} makes ${unitsOf(size, more)} ${period.each} than ${second} (${limits})`
    case 'no difference shown':
      return `no difference is shown between ${first} and ${second} (${limits} units ${period.each}); that is not to say that they are equal`
  }
}

/** Where there is a plan, how often each line meets it; then what each line makes beside the first. */
export function compareSentences({ lines, pairs }: CompareResult, period: Period): string[] {
  if (pairs.length === 0) return [`No answer yet: a comparison needs at least 2 simulated ${period.many} of every line.`]
  const [first] = lines
  const plans = lines.flatMap(({ name, plan, planVerdict }) =>
    plan === null || planVerdict === null ? [] : [{ name, plan, words: planPhrase(planVerdict, period.many) }],
  )
  const one = new Set(plans.map(({ plan }) => plan)).size === 1
  const met = plans.map(({ name, plan, words }, index) => {
    const which = one && index > 0 ? 'it is' : `the plan of ${planText(plan)} is`
    return `With ${quoted(name)} ${which} ${words}.`
  })
  return [
    ...met,
    ...pairs
      .filter(({ second }) => second === 0)
      .map(({ first: index, difference }) => differenceSentence(lines[index]!.name, first!.name, difference, period)),
  ]
}

/** a gain below this is none by chance alone: the variance of differences is known to a third with the fewest windows that are looked at */
const NOT_SHARED = 0.7
/** lines that have a figure */
const FIGURES_MAX = 4

/** What the first line makes, and how many more or fewer each of the others; with two lines how the plan fares, too. */
export function compareFigures({ lines, pairs }: CompareResult, { each, many }: Period): AnswerFigure[] {
  const [first] = lines
  if (pairs.length === 0 || first === undefined || first.mean === null || lines.some(({ gridlocks }) => gridlocks > 0)) return []
  const others = pairs.flatMap(({ first: index, second, difference }): AnswerFigure[] => {
    if (second !== 0) return []
    const isShown = difference.status !== 'no difference shown'
    return [differenceFigure(quoted(lines[index]!.name), difference, `units ${each}${isShown ? '' : ': no difference shown'}`)]
  })
  const plans = lines.length > 2 ? [] : lines.flatMap(({ name, plan, planVerdict }) => planOfLine(name, plan, planVerdict, many))
  const own = figureOf(quoted(first.name), roundedParts(first.mean.mean, first.mean.halfWidth), `units ${each}`)
  return [...others.slice(0, FIGURES_MAX - 1), own, ...plans].slice(0, FIGURES_MAX)
}

/** A difference as a large figure: more has a plus sign, unless it rounds to 0. */
export function differenceFigure(label: string, difference: Difference, what: string): AnswerFigure {
  const figure = figureOf(label, differenceParts(difference), what)
  return difference.mean > 0 && /[1-9]/.test(figure.value) ? { ...figure, value: `+${figure.value}` } : figure
}

function planOfLine(
  name: string,
  plan: number | null,
  verdict: CompareResult['lines'][number]['planVerdict'],
  many: string,
): AnswerFigure[] {
  if (plan === null || verdict === null) return []
  const figure = planFigure(plan, verdict, many)
  return [{ ...figure, label: `${figure.label}, ${quoted(name)}` }]
}

/** What more replications would narrow, and what the pairing was worth. */
export function compareSure({ lines, pairs, level }: CompareResult, period: Period): string[] {
  if (pairs.length === 0) return []
  const n = lines[0]!.units.length
  const worlds = `Every line met the same ${formatNumber(n, 0)} simulated ${period.many}: the same products, task times and stops.`
  const random = pairs.some(({ difference }) => difference.halfWidth > 0)
  if (!random)
    return [worlds, pairs.length === 1 ? 'The difference is the same in each of them.' : 'The differences are the same in each of them.']
  const together =
    pairs.length === 1
      ? `The interval holds the true difference in ${levelWords(level)} of such studies; more simulated ${period.many} narrow it.`
      : `The ${pairs.length} intervals, one for each pair of lines, are at ${levelWords(pairs[0]!.difference.level)} each, so that all of them hold in ${levelWords(level)} of such studies; more simulated ${period.many} narrow them.`
  const few = intervalsCaution(
    n,
    lines.flatMap(({ mean }) => mean ?? []),
    period.many,
  )
  return [
    worlds,
    `${together}${few}`,
    ...pairingSentence(
      pairs.map(({ difference }) => difference),
      period,
    ),
  ]
}

/**
 * What the same worlds were worth, where enough of them were run to know.
 *
 * @param narrow  what would be as narrow
 */
export function pairingSentence(differences: readonly Difference[], { many }: Pick<Period, 'many'>, narrow = 'intervals'): string[] {
  const gains = differences.flatMap(({ n, pairingGain }) => (pairingGain === null || n < FEW ? [] : [pairingGain]))
  if (gains.length === 0) return []
  const least = Math.min(...gains)
  if (least < NOT_SHARED)
    return ['Some lines do not share their chance events well, as when tasks or stops have other names: their intervals are wide.']
  if (least < 1.05) return []
  return [`Independent runs would need at least ${formatNumber(least, least < 10 ? 1 : 0)} times as many ${many} for ${narrow} as narrow.`]
}

export const quoted = (name: string): string => `“${name}”`

/** Never rounded up to all: "98.3 %". */
export function levelWords(level: number): string {
  const tenths = Math.floor(level * 1000 + 1e-9) / 10
  return Number.isInteger(tenths) ? formatShare(level) : `${formatNumber(tenths, 1)}\u202f%`
}
