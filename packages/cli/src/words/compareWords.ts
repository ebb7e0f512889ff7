/** What a comparison tells, in sentences and tables. */
import { decimalsFor, formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import type { Difference } from '@loopwright/scenario'
import type { CompareResult } from '@loopwright/study'

type Pair = CompareResult['pairs'][number]

const MINUS = '\u2212'
/** places of one change that are all named */
const PLACES_MAX = 4

/** The answer: what each other line makes beside the first one. */
export function compareSentences(result: CompareResult, per: string): string[] {
  const { lines, pairs } = result
  if (pairs.length === 0) return ['Stopped before two replications of each were done: nothing to compare.']
  return pairs.filter(({ second }) => second === 0).map((pair) => pairSentence(lines[pair.first]!.name, lines[0]!.name, pair, per))
}

/** "B makes 5.8 more per shift than A in the same worlds (95 %: 4.0 to 7.6)." */
export function pairSentence(first: string, second: string, { difference }: Pick<Pair, 'difference'>, per: string): string {
  const { mean, low, high, status, halfWidth } = difference
  if (status === 'identical in every replication') return `${first} makes exactly what ${second} makes, in every replication.`
  if (status === 'always differs by the same') return `${first} always makes ${size(mean, 1)} ${than(mean)} per ${per} than ${second}.`
  const decimals = Math.max(0, decimalsFor(halfWidth, 1))
  const limits = `${formatShare(difference.level)}: ${formatNumber(low, decimals)} to ${formatNumber(high, decimals)}`
  if (status === 'difference shown') {
    return `${first} makes ${size(mean, decimals)} ${than(mean)} per ${per} than ${second} in the same worlds (${limits}). The difference is real: chance alone hardly ever gives it.`
  }
  const most = Math.max(Math.abs(low), Math.abs(high))
  return `No difference shown between ${first} and ${second}: at most ${formatNumber(most, decimals)} per ${per} either way (${limits}). That is not to say that they are equal.`
}

/** How sure, and what pairing brought. */
export function compareSure(result: CompareResult): string[] {
  const { pairs, lines } = result
  if (pairs.length === 0) return []
  const n = lines[0]!.units.length
  const together =
    pairs.length === 1
      ? `The interval holds the true difference in ${formatShare(result.level)} of such studies; more replications narrow it.`
      : `All ${pairs.length} intervals hold together in ${formatShare(result.level)} of such studies (each is at ${formatNumber(pairs[0]!.difference.level * 100, 2)} %); more replications narrow them.`
  const gains = pairs.flatMap(({ difference }) => (difference.pairingGain === null ? [] : [difference.pairingGain]))
  const brought =
    gains.length === 0
      ? []
      : [`Each of ${n} random worlds met every line, which was worth ${times(Math.min(...gains), Math.max(...gains))} the replications.`]
  return [together, ...brought]
}

/** Streams that do not line up, lines that stood still, few replications. */
export function compareWarnings({ pairs, lines, replications, partial }: CompareResult): string[] {
  const apart = pairs
    .filter(({ difference }) => difference.pairingGain !== null && difference.pairingGain < 1)
    .map(
      ({ first, second }) =>
        `Pairing ${lines[first]!.name} with ${lines[second]!.name} made the interval wider: their random worlds do not line up, as when tasks or stops have other names.`,
    )
  const still = lines.filter(({ gridlocks }) => gridlocks > 0)
  const n = lines[0]!.units.length
  return [
    ...(partial ? [`Stopped early: ${n} of ${replications} replications are in.`] : []),
    ...(n >= 2 && n < 10 ? [`Only ${n} replications: the intervals rest on the normal shape. 30 are usual.`] : []),
    ...still.map(
      ({ name, gridlocks, units }) =>
        `${name} stood still in ${gridlocks} of ${units.length} replications; they count with what they made.`,
    ),
    ...apart,
  ]
}

export function compareTable(result: CompareResult, per: string): Table {
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const planned = result.lines.some(({ plan }) => plan !== null)
  const toFirst = new Map(result.pairs.filter(({ second }) => second === 0).map((pair) => [pair.first, pair.difference]))
  return {
    caption: `Lines in the same random worlds, per ${per}`,
    columns: [
      { head: 'Line', align: 'left', pageOnly: false },
      right('Carriers'),
      right(`Units per\n${per}`),
      right('More than\nthe first'),
      ...(planned ? [right('Plan met\nin')] : []),
    ],
    rows: result.lines.map(({ name, carriers, mean, meetsPlan }, index) => {
      const difference = toFirst.get(index)
      return {
        cells: [
          shortened(name),
          formatNumber(carriers, 0),
          mean === null ? '–' : formatWithHalfWidth(mean.mean, mean.halfWidth),
          difference === undefined ? '' : formatWithHalfWidth(difference.mean, difference.halfWidth, 1),
          ...(planned ? [meetsPlan === null ? '–' : formatShare(meetsPlan.share)] : []),
        ],
        marked: false,
      }
    }),
    note: `Means with 95 % intervals; differences at ${formatShare(result.level)} for all of them together.`,
  }
}

/** "stations.S5.zone: Z15 → Z14" */
export function differenceLine({ path, places, before, after }: Difference): string {
  const where =
    places.length === 0
      ? ''
      : places.length <= PLACES_MAX
        ? ` (${places.join(', ')})`
        : ` (${places.length} places, ${places[0]} … ${places.at(-1)})`
  return `${path}${where}: ${before ?? 'none'} → ${after ?? 'none'}`
}

export const shortened = (name: string): string => (name.length <= 26 ? name : `${name.slice(0, 25)}…`)
const size = (mean: number, decimals: number): string => formatNumber(Math.abs(mean), decimals).replace(MINUS, '')
const than = (mean: number): string => (mean >= 0 ? 'more' : 'less')
const times = (low: number, high: number): string => {
  const text = (value: number): string => formatNumber(value, value < 10 ? 1 : 0)
  return text(low) === text(high) ? `${text(low)} times` : `${text(low)} to ${text(high)} times`
}
