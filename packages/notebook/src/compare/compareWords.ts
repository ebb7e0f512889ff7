/** What a comparison says, in sentences. Names stand in quotation marks, so that a sentence stays one whatever they are. */
import { decimalsFor, formatNumber, formatShare } from '@loopwright/charts'
import type { CompareResult } from '@loopwright/study'
import type { Period } from '../sweep/period.ts'

export type Difference = CompareResult['pairs'][number]['difference']

/** Units beside each other are whole; differences get one decimal at most. */
const DECIMALS_MAX = 1

/** The numbers of a difference as texts: one rounding, wherever they stand on a page. */
export interface DifferenceWords {
  /** without a sign: "7.8" */
  readonly size: string
  /** "−7.8 ± 1.2" */
  readonly withHalfWidth: string
  /** limits without a sign, the smaller first; of a difference that is not shown: both signed */
  readonly low: string
  readonly high: string
}

export function differenceWords({ mean, halfWidth, low, high, status }: Difference): DifferenceWords {
  const decimals = Math.max(0, decimalsFor(halfWidth, DECIMALS_MAX))
  const text = (value: number): string => formatNumber(value, decimals)
  const limits = status === 'difference shown' ? [Math.abs(low), Math.abs(high)].sort((a, b) => a - b) : [low, high]
  return {
    size: text(Math.abs(mean)),
    withHalfWidth: halfWidth > 0 ? `${text(mean)} ± ${text(Math.max(halfWidth, 10 ** -decimals))}` : text(mean),
    low: text(limits[0]!),
    high: text(limits[1]!),
  }
}

/** "“Proposal” makes 7.8 fewer units a shift than “today” in the same random worlds (95 %: 6.6 to 9.0)." */
export function differenceSentence(first: string, second: string, difference: Difference, period: Period): string {
  const { size, low, high } = differenceWords(difference)
  const [a, b] = [quoted(first), quoted(second)]
  const more = difference.mean > 0 ? 'more' : 'fewer'
  const limits = `${levelWords(difference.level)}: ${low} to ${high}`
  switch (difference.status) {
    case 'identical in every replication':
      return `${a} makes exactly what ${b} makes, in every replication.`
    case 'always differs by the same':
      return `${a} makes ${size} ${more} units ${period.each} than ${b}, in every replication.`
    case 'difference shown':
      return `${a} makes ${size} ${more} units ${period.each} than ${b} in the same random worlds (${limits}).`
    case 'no difference shown':
      return `No difference is shown between ${a} and ${b} (${limits} units ${period.each}); that is not to say that they are equal.`
  }
}

/** What each line makes beside the first one, then whether the plan is met by it. */
export function compareSentences({ lines, pairs }: CompareResult, period: Period): string[] {
  if (pairs.length === 0) return ['No answer yet: a comparison needs at least 2 replications of every line.']
  const first = lines[0]!
  return pairs
    .filter(({ second }) => second === 0)
    .map(({ first: index, difference }) => differenceSentence(lines[index]!.name, first.name, difference, period))
}

/** What more replications would narrow, and what the pairing was worth. */
export function compareSure({ lines, pairs, level }: CompareResult, period: Period): string[] {
  if (pairs.length === 0) return []
  const n = lines[0]!.units.length
  const random = pairs.some(({ difference }) => difference.halfWidth > 0)
  if (!random) return [`The differences are the same in each of ${n} replications: nothing random reaches them.`]
  const together =
    pairs.length === 1
      ? `The interval holds the true difference in ${levelWords(level)} of such studies.`
      : `All ${pairs.length} intervals, one for each pair, hold together in ${levelWords(level)} of such studies.`
  const few = n < 10 ? ' Few replications: the intervals rest on the normal shape.' : ''
  return [
    `${together} More replications narrow ${pairs.length === 1 ? 'it' : 'them'}; they do not change how much ${period.many} differ.${few}`,
    ...pairingSentence(pairs.map(({ difference }) => difference)),
  ]
}

function pairingSentence(differences: readonly Difference[]): string[] {
  const gains = differences.flatMap(({ pairingGain }) => (pairingGain === null ? [] : [pairingGain]))
  if (gains.length === 0) return []
  const least = Math.min(...gains)
  if (least < 1)
    return ['Some lines do not share their random worlds well, as when tasks or stops have other names: their intervals are wide.']
  const times = formatNumber(least, least < 10 ? 1 : 0)
  return [`Every line met the same products, task times and stops, which is worth at least ${times} times the replications.`]
}

export const quoted = (name: string): string => `“${name}”`

/** Never rounded up to all: "98.3 %". */
export function levelWords(level: number): string {
  const tenths = Math.floor(level * 1000 + 1e-9) / 10
  return Number.isInteger(tenths) ? formatShare(level) : `${formatNumber(tenths, 1)}\u202f%`
}
