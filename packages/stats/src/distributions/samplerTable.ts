import { notAShare } from '../messages.ts'
import { normalQuantilesInto } from '../special/normalQuantile.ts'
import { constantInto } from './constant.ts'
import { discreteInto } from './discrete.ts'
import type { Distribution } from './distribution.ts'
import { inner, kindOf, needUsable } from './distributions.ts'
import { empiricalInto, interpolatedInto } from './empirical.ts'
import { exponentialInto } from './exponential.ts'
import { gammaInto } from './gamma.ts'
import { keptRange, limitedAfter, limitedBefore } from './limited.ts'
import { lognormalFromNormal, lognormalInto, lognormalsFromNormals } from './lognormal.ts'
import { occasionalInto } from './occasional.ts'
import { pertInto } from './pert.ts'
import { replayInto } from './replay.ts'
import { triangularInto } from './triangular.ts'
import { uniformInto } from './uniform.ts'
import { weibullInto } from './weibull.ts'

const CONSTANT = 0
const UNIFORM = 1
const TRIANGULAR = 2
const EXPONENTIAL = 3
const LOGNORMAL = 4
const GAMMA = 5
const WEIBULL = 6
const PERT = 7
const EMPIRICAL = 8
const INTERPOLATED = 9
const DISCRETE = 10
const REPLAY = 11
const OCCASIONAL = 12
const LIMITED = 13

/** What a draw takes: nothing, one uniform, or its number in the list. */
export type DrawUse = 'nothing' | 'uniform' | 'index'

/**
 * Distributions compiled for the hot loop: draws allocate nothing but for gamma and PERT, whose inverses are solved for.
 *
 * Layout: row r has its kind in code[r], its numbers in parameters from start[r] on (each kind's file says which), and the row of the distribution inside it in inside[r].
 * Rows 0 … n − 1 are the distributions given; the rows after them are those inside others.
 *
 * @example (t => { t.draw(0, 0.5, 0); return t.value[0] })(new SamplerTable([{ kind: 'uniform', min: 2, max: 5 }])) // => 3.5
 */
export class SamplerTable {
  /** the value that the last draw made; length 1 */
  readonly value: Float64Array = new Float64Array(1)
  readonly size: number
  private readonly code: Uint8Array
  private readonly start: Int32Array
  private readonly inside: Int32Array
  private readonly parameters: Float64Array
  private readonly use: readonly DrawUse[]

  /** @throws StatisticsError E_DISTRIBUTION where one cannot be used */
  constructor(distributions: readonly Distribution[]) {
    for (const d of distributions) needUsable(d)
    const rows = [...distributions]
    const code: number[] = []
    const start: number[] = []
    const inside: number[] = []
    const parameters: number[] = []
    // the list grows while it is walked: a distribution inside another gets a row after all that are known
    for (let r = 0; r < rows.length; r++) {
      const d = rows[r]!
      code.push(codeOf(d))
      start.push(parameters.length)
      inside.push('of' in d ? rows.push(insideOf(d)) - 1 : -1)
      for (const number of numbersOf(d)) parameters.push(number)
    }
    this.size = distributions.length
    this.code = Uint8Array.from(code)
    this.start = Int32Array.from(start)
    this.inside = Int32Array.from(inside)
    this.parameters = Float64Array.from(parameters)
    this.use = distributions.map(useOf)
  }

  /** What a draw from this distribution takes. */
  uses(index: number): DrawUse {
    return this.use[index]!
  }

  /**
   * Writes one value into `value[0]`.
   *
   * @param index  which of the distributions given
   * @param u      the uniform, above 0 and below 1; not looked at where the draw takes none
   * @param k      the number of the draw, from 0; looked at by replay lists only
   */
  draw(index: number, u: number, k: number): void {
    this.value[0] = u
    this.run(index, k)
  }

  /** The same with the uniform read from a list: a number handed over a call may cost an allocation, a place in a list never does. */
  drawAt(index: number, uniforms: Float64Array, at: number, k: number): void {
    this.value[0] = uniforms[at]!
    this.run(index, k)
  }

  /** True: a draw is made from a normal quantile alone, which may be worked out before it is known of which of several such distributions (see `drawFromNormal`). */
  isFromNormal(index: number): boolean {
    return this.code[index] === LOGNORMAL
  }

  /** Writes into `value[0]` what `drawAt` gives for a uniform, from the normal quantile of that uniform in `list[at]`. @param index  one that `isFromNormal` */
  drawFromNormal(index: number, list: Float64Array, at: number): void {
    this.value[0] = list[at]!
    lognormalFromNormal(this.parameters, this.start[index]!, this.value, 0)
  }

  /** Replaces uniforms by what `drawAt` gives for them, `count` from `first` on: quicker than one by one, the same values. @param index  one that takes a uniform */
  drawBlock(index: number, io: Float64Array, first: number, count: number): void {
    if (this.isFromNormal(index)) {
      normalQuantilesInto(io, first, count)
      lognormalsFromNormals(this.parameters, this.start[index]!, io, first, count)
      return
    }
    for (let at = first; at < first + count; at++) {
      this.drawAt(index, io, at, 0)
      io[at] = this.value[0]!
    }
  }

  private run(row: number, k: number): void {
    const p = this.parameters
    const o = this.start[row]!
    const io = this.value
    switch (this.code[row]) {
      case CONSTANT:
        constantInto(p, o, io)
        break
      case UNIFORM:
        uniformInto(p, o, io)
        break
      case TRIANGULAR:
        triangularInto(p, o, io)
        break
      case EXPONENTIAL:
        exponentialInto(p, o, io)
        break
      case LOGNORMAL:
        lognormalInto(p, o, io)
        break
      case GAMMA:
        gammaInto(p, o, io)
        break
      case WEIBULL:
        weibullInto(p, o, io)
        break
      case PERT:
        pertInto(p, o, io)
        break
      case EMPIRICAL:
        empiricalInto(p, o, io)
        break
      case INTERPOLATED:
        interpolatedInto(p, o, io)
        break
      case DISCRETE:
        discreteInto(p, o, io)
        break
      case REPLAY:
        replayInto(p, o, k, io)
        break
      case OCCASIONAL:
        if (occasionalInto(p, o, io)) {
          this.run(this.inside[row]!, k)
          io[0] = p[o]! + io[0]!
        }
        break
      case LIMITED:
        limitedBefore(p, o, io)
        this.run(this.inside[row]!, k)
        limitedAfter(p, o, io)
        break
    }
  }
}

/**
 * Value of a distribution at a uniform: its inverse cdf. A replay list is taken as a sample of its values.
 *
 * @param u  above 0 and below 1
 * @throws StatisticsError E_DISTRIBUTION, E_DOMAIN
 * @example quantile({ kind: 'triangular', min: 3, mode: 8, max: 8 }, 0.25) // => 5.5
 */
export function quantile(d: Distribution, u: number): number {
  if (!(u > 0 && u < 1)) throw notAShare('The uniform', u)
  const table = new SamplerTable([asSample(d)])
  table.draw(0, u, 0)
  return table.value[0]!
}

function asSample(d: Distribution): Distribution {
  if (d.kind === 'replay') return { kind: 'empirical', values: d.values, interpolate: false }
  return d.kind === 'limited' ? { ...d, of: asSample(d.of) } : d
}

/** Limits condition the cdf, so that a list under them is taken in the order of its values instead of the listed one. */
function insideOf(d: Extract<Distribution, { of: Distribution }>): Distribution {
  return d.kind === 'limited' && (d.min !== null || d.max !== null) ? rising(d.of) : d.of
}

function rising(d: Distribution): Distribution {
  if (d.kind === 'limited' || d.kind === 'occasional') return { ...d, of: rising(d.of) }
  if (d.kind !== 'discrete') return d
  const order = [...d.values.keys()].sort((a, b) => d.values[a]! - d.values[b]!)
  return { ...d, values: order.map((i) => d.values[i]!), weights: order.map((i) => d.weights[i]!) }
}

function useOf(d: Distribution): DrawUse {
  if (d.kind === 'constant') return 'nothing'
  if (d.kind === 'replay') return 'index'
  return d.kind === 'limited' ? useOf(d.of) : 'uniform'
}

function numbersOf(d: Distribution): readonly number[] {
  const numbers = kindOf(d).parameters(d)
  if (d.kind !== 'limited') return numbers
  const { low, high } = keptRange(d, inner)
  return [low, high - low, ...numbers.slice(2)]
}

function codeOf(d: Distribution): number {
  switch (d.kind) {
    case 'constant':
      return CONSTANT
    case 'uniform':
      return UNIFORM
    case 'triangular':
      return TRIANGULAR
    case 'exponential':
      return EXPONENTIAL
    case 'lognormal':
      return LOGNORMAL
    case 'gamma':
      return GAMMA
    case 'weibull':
      return WEIBULL
    case 'pert':
      return PERT
    case 'empirical':
      return d.interpolate ? INTERPOLATED : EMPIRICAL
    case 'discrete':
      return DISCRETE
    case 'replay':
      return REPLAY
    case 'occasional':
      return OCCASIONAL
    case 'limited':
      return LIMITED
  }
}
