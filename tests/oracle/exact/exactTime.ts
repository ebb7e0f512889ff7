/** Times of the exactly known lines as the engine takes them. */
import type { MixSpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import type { Time } from '../../helpers/smallLoop.ts'
import type { ExactTime } from './exactCheck.ts'

export function timeOf(time: ExactTime): Time {
  if (typeof time === 'number') return time
  const { dist, ...rest } = time
  const { p, values } = time as unknown as { readonly p: number; readonly values: readonly number[] }
  switch (dist) {
    case 'geometric':
      return geometric(p)
    case 'empirical':
      return { kind: 'empirical', values, interpolate: false }
    default:
      return { kind: dist, ...rest } as Distribution
  }
}

/** P(k) = p·(1 − p)^(k − 1), k = 1, 2, … as a list, cut where less than 1e-14 is left. */
export function geometric(p: number): Distribution {
  const values: number[] = []
  const weights: number[] = []
  for (let k = 1, left = 1; left > 1e-14; k++, left *= 1 - p) {
    values.push(k)
    weights.push(p * left)
  }
  return { kind: 'discrete', values, weights }
}

/**
 * Hyperexponential times are a mix: for each of the places where work takes one, a product is of the quick or of the slow kind; so a line with n such places has 2ⁿ
 * variants, whose times are exponential and whose shares are the products of the places' own.
 */
export function variantsOf(times: readonly ExactTime[]): {
  readonly variants: number
  readonly mix: MixSpec
  /** one entry a place: a time, or one per variant */
  readonly times: readonly (Time | readonly Time[])[]
} {
  const isMixed = (time: ExactTime) => typeof time !== 'number' && time.dist === 'hyperexponential'
  const mixed = times.flatMap((time) =>
    isMixed(time) ? [time as unknown as { readonly p: number; readonly rates: readonly number[] }] : [],
  )
  const variants = 2 ** mixed.length
  const shares = Array.from({ length: variants }, (_, v) =>
    mixed.reduce((share, { p }, place) => share * ((v >> place) % 2 === 0 ? p : 1 - p), 1),
  )
  let place = 0
  return {
    variants,
    mix: { kind: 'random', shares },
    times: times.map((time) => {
      if (!isMixed(time)) return timeOf(time)
      const { rates } = mixed[place]!
      const bit = place++
      return shares.map((_, v): Time => ({ kind: 'exponential', mean: 1 / rates[(v >> bit) % 2]! }))
    }),
  }
}
