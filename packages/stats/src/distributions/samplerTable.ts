import { notAShare } from '../messages.ts'
import { constantInto } from './constant.ts'
import type { Distribution, DistributionKind } from './distribution.ts'
import { inner, kindOf, needUsable } from './distributions.ts'
import type { Around, DrawUse, Into, ManyInto } from './kind.ts'
import { lognormalFromNormal, lognormalInto } from './lognormal.ts'

/**
 * Distributions compiled for the hot loop: draws allocate nothing but for gamma and PERT, whose inverses are solved for.
 *
 * Layout: row r has its inverse in into[r], its numbers in parameters from start[r] on (each kind's file says which), and the row of the distribution inside it in inside[r].
 * Rows 0 … n − 1 are the distributions given; the rows after them are those inside others.
 *
 * @example (t => { t.draw(0, 0.5, 0); return t.value[0] })(new SamplerTable([{ kind: 'uniform', min: 2, max: 5 }])) // => 3.5
 */
export class SamplerTable {
  /** the value that the last draw made; length 1 */
  readonly value: Float64Array = new Float64Array(1)
  readonly size: number
  private readonly start: Int32Array
  private readonly inside: Int32Array
  private readonly parameters: Float64Array
  private readonly into: readonly Into[]
  private readonly around: readonly (Around<DistributionKind> | null)[]
  private readonly many: readonly (ManyInto | null)[]
  private readonly use: readonly DrawUse[]

  /** @throws StatisticsError E_DISTRIBUTION where one cannot be used */
  constructor(distributions: readonly Distribution[]) {
    for (const d of distributions) needUsable(d)
    const rows = [...distributions]
    const start: number[] = []
    const inside: number[] = []
    const parameters: number[] = []
    const into: Into[] = []
    const around: (Around<DistributionKind> | null)[] = []
    // the list grows while it is walked: a distribution inside another gets a row after all that are known
    for (let r = 0; r < rows.length; r++) {
      const d = rows[r]!
      const kind = kindOf(d)
      start.push(parameters.length)
      inside.push(kind.around === undefined ? -1 : rows.push(kind.around.of(d)) - 1)
      into.push(kind.inverse(d) ?? constantInto)
      around.push(kind.around ?? null)
      for (const number of kind.parameters(d, inner)) parameters.push(number)
    }
    this.size = distributions.length
    this.start = Int32Array.from(start)
    this.inside = Int32Array.from(inside)
    this.parameters = Float64Array.from(parameters)
    this.into = into
    this.around = around
    this.many = distributions.map((d) => kindOf(d).many ?? null)
    this.use = distributions.map(inner.draws)
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
    return this.into[index] === lognormalInto
  }

  /** Writes into `value[0]` what `drawAt` gives for a uniform, from the normal quantile of that uniform in `list[at]`. @param index  one that `isFromNormal` */
  drawFromNormal(index: number, list: Float64Array, at: number): void {
    this.value[0] = list[at]!
    lognormalFromNormal(this.parameters, this.start[index]!, this.value, 0)
  }

  /** Replaces uniforms by what `drawAt` gives for them, `count` from `first` on: quicker than one by one, the same values. @param index  one that takes a uniform */
  drawBlock(index: number, io: Float64Array, first: number, count: number): void {
    const many = this.many[index]!
    if (many !== null) {
      many(this.parameters, this.start[index]!, io, first, count)
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
    const around = this.around[row]!
    if (around === null) this.into[row]!(p, o, io, k)
    else if (around.before(p, o, io)) {
      this.run(this.inside[row]!, k)
      around.after(p, o, io)
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
