import { StatisticsError } from '../statisticsError.ts'
import { afterSpaces, lettersInto, mashInto, shareAt, spaceShares } from './mash.ts'

/** Numbers of state per stream: carry, then the three lags. */
export const ALEA_STATE = 4

/** what a uniform of exactly 0 counts as, 2⁻⁵⁴: half of the smallest other value, so that no inverse meets its pole */
export const ZERO_COUNTS_AS = 2 ** -54

/** Text that many streams begin with, ready for `seedAlea`. */
export interface AleaPrefix {
  /** its letters as codes, and how many */
  letters: Uint16Array
  length: number
  /** 0: the hash after it, the first time; 1: the hash under way */
  readonly hash: Float64Array
}

export const makePrefix = (): AleaPrefix => ({ letters: new Uint16Array(64), length: 0, hash: new Float64Array(2) })

/**
 * Makes `seed/replication/` the text that streams begin with.
 *
 * @param seed         not empty, without '/'
 * @param replication  whole number from 0
 * @throws StatisticsError E_SEED for such a seed or replication
 */
export function setPrefix(prefix: AleaPrefix, seed: string, replication: number): void {
  checkSeed(seed, replication)
  const text = `${seed}/${replication}/`
  prefix.length = text.length
  if (text.length > prefix.letters.length) prefix.letters = new Uint16Array(text.length)
  lettersInto(prefix.letters, text)
  prefix.hash[0] = afterSpaces
  mashInto(prefix.hash, 0, prefix.letters, 0, text.length)
}

/**
 * Writes the start of the stream named prefix + name into `state[offset … offset + 3]`; the name is `letters[from … to − 1]`.
 *
 * The text alone starts the stream (MODEL.md §9): equal texts are equal streams, whatever else the scenario holds. It is hashed three times, one time after the other.
 */
export function seedAlea(state: Float64Array, offset: number, prefix: AleaPrefix, letters: Uint16Array, from: number, to: number): void {
  const { hash } = prefix
  state[offset] = 1
  hash[1] = hash[0]!
  for (let lag = 0; lag < 3; lag++) {
    if (lag > 0) mashInto(hash, 1, prefix.letters, 0, prefix.length)
    mashInto(hash, 1, letters, from, to)
    const share = spaceShares[lag]! - shareAt(hash, 1)
    state[offset + 1 + lag] = share < 0 ? share + 1 : share
  }
}

/**
 * One uniform of 53 bits, above 0 and below 1, from two steps of the generator, into `out[at]`; bit-identical to `.double()` of seedrandom 3.0.5.
 *
 * The library keeps its state in object fields that take a new heap number at each step; here it stays in one typed array, and nothing is allocated. Whole parts are
 * taken as numbers: to turn each into an integer and back takes half of the time of a step, and the next one waits for it.
 *
 * @see Baagøe, Alea (2010), as carried by seedrandom 3.0.5
 */
export function stepAlea(state: Float64Array, offset: number, out: Float64Array, at: number): void {
  const lag0 = state[offset + 1]!
  const lag1 = state[offset + 2]!
  const lag2 = state[offset + 3]!
  const first = 2091639 * lag0 + state[offset]! * 2.3283064365386963e-10
  const firstCarry = Math.floor(first)
  const high = first - firstCarry
  const second = 2091639 * lag1 + firstCarry * 2.3283064365386963e-10
  const secondCarry = Math.floor(second)
  const low = second - secondCarry
  state[offset] = secondCarry
  state[offset + 1] = lag2
  state[offset + 2] = high
  state[offset + 3] = low
  const u = high + Math.floor(low * 0x200000) * 1.1102230246251565e-16
  out[at] = u // not by a choice of two values: that would box each draw
  if (u === 0) out[at] = ZERO_COUNTS_AS
}

/**
 * `count` uniforms into `out[at … at + count − 1]`: the bits of as many steps, with the state kept in registers in between.
 */
export function stepAleaBlock(state: Float64Array, offset: number, out: Float64Array, at: number, count: number): void {
  let carry = state[offset]!
  let lag0 = state[offset + 1]!
  let lag1 = state[offset + 2]!
  let lag2 = state[offset + 3]!
  for (let k = at; k < at + count; k++) {
    const first = 2091639 * lag0 + carry * 2.3283064365386963e-10
    const firstCarry = Math.floor(first)
    const high = first - firstCarry
    const second = 2091639 * lag1 + firstCarry * 2.3283064365386963e-10
    const secondCarry = Math.floor(second)
    carry = secondCarry
    lag0 = lag2
    lag1 = high
    lag2 = second - secondCarry
    const u = high + Math.floor(lag2 * 0x200000) * 1.1102230246251565e-16
    out[k] = u
    if (u === 0) out[k] = ZERO_COUNTS_AS
  }
  state[offset] = carry
  state[offset + 1] = lag0
  state[offset + 2] = lag1
  state[offset + 3] = lag2
}

/** @throws StatisticsError E_SEED where two different streams could get the same name */
export function checkSeed(seed: string, replication: number): void {
  if (typeof seed !== 'string')
    throw new StatisticsError('E_SEED', `The seed ${String(seed)} is no text: write it in quotes, such as "42".`)
  if (seed === '') throw new StatisticsError('E_SEED', 'The seed is empty: give a text or a number, such as 42.')
  if (seed.includes('/')) {
    throw new StatisticsError(
      'E_SEED',
      `The seed "${seed}" contains "/": two different streams could get the same name; leave the "/" out.`,
    )
  }
  if (!Number.isSafeInteger(replication) || replication < 0) {
    throw new StatisticsError('E_SEED', `The replication ${replication} is not a whole number from 0: count replications 0, 1, 2, ….`)
  }
}
