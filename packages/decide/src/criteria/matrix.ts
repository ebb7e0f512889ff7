/** A weighted matrix of criteria: must-haves first, scores from 1 to 5 by written anchors, and how much the winner hangs on the weights. */
import { stream } from '@loopwright/stats'

/** The worst score. */
const SCORE_LEAST = 1
/** The best score. */
const SCORE_MOST = 5
/** Totals nearer than this are told as a tie: nobody scores finer. */
const TIE = 0.05

/** One criterion with the score of each alternative. */
export interface ScoredCriterion {
  readonly name: string
  /** per cent; all sum to 100 */
  readonly weight: number
  /** one for each alternative, 1 … 5; computed ones may lie between whole numbers */
  readonly scores: readonly number[]
}

/** Something that an alternative must have, or it is out. */
export interface MustHave {
  readonly name: string
  /** one for each alternative */
  readonly met: readonly boolean[]
}

/** What the matrix is made of. */
export interface MatrixInput {
  readonly alternatives: readonly string[]
  readonly mustHaves: readonly MustHave[]
  readonly criteria: readonly ScoredCriterion[]
}

/** Who wins where the weights are changed. */
export interface WeightCase {
  readonly criterion: string
  readonly change: 'more' | 'less' | 'left out'
  /** indices of alternatives; several: a tie */
  readonly winners: readonly number[]
}

/** A matrix, and how much its winner hangs on the weights. */
export interface MatrixResult {
  /** sums of weight × score over 100, 1 … 5; of an alternative that is out as well */
  readonly totals: readonly number[]
  /** names of the must-haves that each alternative misses */
  readonly misses: readonly (readonly string[])[]
  /** indices of alternatives that are in, best first */
  readonly order: readonly number[]
  /** indices; several: a tie; none: all are out */
  readonly winners: readonly number[]
  /** each weight 30 % more and less by itself, and each criterion left out; the others keep their proportions */
  readonly cases: readonly WeightCase[]
  /** share of the draws of all weights within ± 30 % that each alternative wins; ties count for all who are in them */
  readonly winShares: readonly number[]
  /** share of the draws that end in a tie */
  readonly tieShare: number
  readonly draws: number
}

/** Each weight is moved by so much of its own. */
export const SWING = 0.3
const DRAWS = 2000

/**
 * Totals, winners, and how often each alternative wins where the weights are others.
 *
 * @param seed  names the draws of the weights
 * @throws RangeError  if the weights do not sum to 100, a score lies outside of 1 … 5, or a row has not one entry for each alternative
 * @see common practice, no source: must-haves first, weights agreed before the scores, weights changed by 30 %, one criterion left out
 * @example decisionMatrix({ alternatives: ['a', 'b'], mustHaves: [], criteria: [{ name: 'output', weight: 60, scores: [5, 3] }, { name: 'floor', weight: 40, scores: [1, 3] }] }, '1').totals // => [3.4, 3]
 */
export function decisionMatrix(input: MatrixInput, seed: string): MatrixResult {
  refuse(input)
  const { alternatives, mustHaves, criteria } = input
  const misses = alternatives.map((_, index) => mustHaves.filter(({ met }) => !met[index]).map(({ name }) => name))
  const inIt = [...alternatives.keys()].filter((index) => misses[index]!.length === 0)
  const weights = criteria.map(({ weight }) => weight)
  const totals = totalsOf(input, weights)
  const wins = alternatives.map(() => 0)
  let ties = 0
  const draw = stream(seed, 0, 'bootstrap/weights')
  for (let at = 0; at < DRAWS; at++) {
    const winners = winnersOf(
      totalsOf(
        input,
        weights.map((weight) => weight * (1 + SWING * (2 * draw() - 1))),
      ),
      inIt,
    )
    for (const winner of winners) wins[winner]! += 1
    if (winners.length > 1) ties += 1
  }
  const changed = (at: number, factor: number): number[] => weights.map((weight, index) => (index === at ? weight * factor : weight))
  const caseOf = (at: number, change: WeightCase['change'], factor: number): WeightCase => ({
    criterion: criteria[at]!.name,
    change,
    winners: winnersOf(totalsOf(input, changed(at, factor)), inIt),
  })
  return {
    totals,
    misses,
    order: inIt.toSorted((a, b) => totals[b]! - totals[a]!),
    winners: winnersOf(totals, inIt),
    cases: [...criteria.keys()].flatMap((at) => [
      caseOf(at, 'more', 1 + SWING),
      caseOf(at, 'less', 1 - SWING),
      ...(criteria.length > 1 ? [caseOf(at, 'left out', 0)] : []),
    ]),
    winShares: wins.map((count) => count / DRAWS),
    tieShare: ties / DRAWS,
    draws: DRAWS,
  }
}

function refuse({ alternatives, mustHaves, criteria }: MatrixInput): void {
  const sum = criteria.reduce((all, { weight }) => all + weight, 0)
  if (criteria.some(({ weight }) => !(weight > 0)) || Math.abs(sum - 100) > 1e-9)
    throw new RangeError(`weights are above 0 and sum to 100, not to ${sum}`)
  for (const { name, scores } of criteria) {
    if (scores.length !== alternatives.length)
      throw new RangeError(`"${name}" has ${scores.length} scores for ${alternatives.length} alternatives`)
    const odd = scores.find((score) => !(score >= SCORE_LEAST && score <= SCORE_MOST))
    if (odd !== undefined) throw new RangeError(`a score is from ${SCORE_LEAST} to ${SCORE_MOST}, and "${name}" has ${odd}`)
  }
  for (const { name, met } of mustHaves)
    if (met.length !== alternatives.length)
      throw new RangeError(`"${name}" says ${met.length} answers for ${alternatives.length} alternatives`)
}

/** Weights need not sum to 100 here. */
function totalsOf({ alternatives, criteria }: MatrixInput, weights: readonly number[]): number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  return alternatives.map((_, index) => criteria.reduce((sum, { scores }, at) => sum + weights[at]! * scores[index]!, 0) / all)
}

function winnersOf(totals: readonly number[], inIt: readonly number[]): number[] {
  const best = Math.max(...inIt.map((index) => totals[index]!))
  return inIt.filter((index) => totals[index]! > best - TIE)
}

/**
 * The score of a figure between two anchors, in a straight line; beyond an anchor it is that of the anchor.
 *
 * @param one   figure that scores 1
 * @param five  figure that scores 5; another than `one`
 * @example anchoredScore(330, 300, 340) // => 4
 */
export function anchoredScore(figure: number, one: number, five: number): number {
  const share = (figure - one) / (five - one)
  return SCORE_LEAST + (SCORE_MOST - SCORE_LEAST) * Math.min(1, Math.max(0, share))
}
