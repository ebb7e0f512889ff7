/** What times tell of how they were taken: drift, differences between people, rounding, a clock that ran on. */
import { Tally } from '@loopwright/stats'
import { fences } from '@loopwright/stats/fit'
import { betaTails, binomialCdf } from '@loopwright/stats/special'
import { linearRegression } from 'simple-statistics'

/** A straight line through the times in the order they were taken. */
export interface Trend {
  /** seconds from one time to the next */
  readonly slope: number
  /** of the line, from the first time to the last; seconds */
  readonly change: number
  /** chance of a line as steep where nothing changes */
  readonly p: number
}

/** Times of several people. */
export interface PeopleDiffer {
  readonly people: readonly { readonly name: string; readonly n: number; readonly mean: number; readonly sd: number | null }[]
  /** chance of means so far apart where all work alike (F test); null: not enough times to say */
  readonly p: number | null
}

/** Times that end in the same figure more often than they should. */
export interface Rounding {
  /** to so many seconds */
  readonly step: number
  /** of the times that are multiples of it, 0 … 1 */
  readonly share: number
}

/**
 * The trend over the session.
 *
 * @returns null below 5 times, or where all are equal
 * @example trendOf([30, 31, 32, 33, 34, 34]).slope > 0.8 // => true
 */
export function trendOf(values: readonly number[]): Trend | null {
  const n = values.length
  const { sd } = Tally.of(values)
  if (n < 5 || !(sd! > 0)) return null
  const { m, b } = linearRegression(values.map((value, index) => [index, value]))
  const rest = values.reduce((sum, value, index) => sum + (value - b - m * index) ** 2, 0)
  const all = sd! ** 2 * (n - 1)
  return { slope: m, change: m * (n - 1), p: fTail(all - rest, 1, rest, n - 2) }
}

/**
 * Means by person, and whether they differ (one-way analysis of variance).
 *
 * @returns null where there is one person, or none is named
 * @example peopleDiffer([50, 51, 60, 61], ['A', 'A', 'B', 'B']).p < 0.01 // => true
 */
export function peopleDiffer(values: readonly number[], names: readonly (string | null)[]): PeopleDiffer | null {
  const groups = new Map<string, number[]>()
  names.forEach((name, index) => {
    if (name === null) return
    const group = groups.get(name)
    if (group === undefined) groups.set(name, [values[index]!])
    else group.push(values[index]!)
  })
  if (groups.size < 2) return null
  const tallies = [...groups].map(([name, each]) => ({ name, tally: Tally.of(each) }))
  const people = tallies.map(({ name, tally }) => ({ name, n: tally.count, mean: tally.mean!, sd: tally.sd ?? null }))
  const n = people.reduce((sum, one) => sum + one.n, 0)
  const free = n - people.length
  const grand = people.reduce((sum, one) => sum + one.n * one.mean, 0) / n
  const between = people.reduce((sum, one) => sum + one.n * (one.mean - grand) ** 2, 0)
  const within = people.reduce((sum, one) => sum + (one.n - 1) * (one.sd ?? 0) ** 2, 0)
  return { people, p: free < 1 || within === 0 ? null : fTail(between, people.length - 1, within, free) }
}

/** Chance of a ratio of mean squares as large or larger. */
function fTail(between: number, betweenFree: number, within: number, withinFree: number): number {
  if (!(within > 0)) return between > 0 ? 0 : 1
  const f = Math.max(0, between) / betweenFree / (within / withinFree)
  return betaTails(withinFree / 2, betweenFree / 2, withinFree / (withinFree + betweenFree * f)).lower
}

/** Error rate of the warning about rounding. */
const ROUNDED_P = 0.001

/**
 * Rounding to 5 s or more, by the share of times that are multiples of it.
 *
 * @param values  as observed, seconds
 * @returns       the largest step that shows; null: none
 * @example roundingOf([45, 50, 55, 45, 40, 60, 50, 45]) // => { step: 5, share: 1 }
 */
export function roundingOf(values: readonly number[]): Rounding | null {
  const whole = values.map((value) => Math.round(value * 1000) / 1000)
  if (new Set(whole).size < 2) return null
  for (const step of [60, 30, 15, 10, 5]) {
    const hits = whole.filter((value) => Math.abs(value / step - Math.round(value / step)) < 1e-6).length
    // times to the second meet a multiple once in `step`
    const p = 1 - binomialCdf(hits - 1, whole.length, 1 / step)
    const share = hits / whole.length
    if (p < ROUNDED_P && (step === 5 || share >= 0.9)) return { step, share }
  }
  return null
}

/**
 * Whether values only rise, as those of a watch that is read and not stopped.
 *
 * @example onlyRises([12, 57, 103, 148, 195, 240, 287, 331]) // => true
 */
export const onlyRises = (values: readonly number[]): boolean =>
  values.length >= 8 && values.every((value, index) => index === 0 || value > values[index - 1]!)

/**
 * The fences beyond which a time is shown as far out.
 *
 * @returns null below 8 values
 * @example fencesOf([30, 31, 29, 32, 30, 31, 30, 58]) // => [28.125, 33.125]
 */
export function fencesOf(values: readonly number[]): readonly [low: number, high: number] | null {
  if (values.length < 8) return null
  const { low, high } = fences(values)
  return [low, high]
}
