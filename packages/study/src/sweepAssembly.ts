/** A carrier sweep while its rows come in, and the result made of them: shared by the sweep on threads and the one in the calling thread. */
import { type Law, type LineSpec, law } from '@loopwright/line'
import { CountStudy } from './countStudy.ts'
import { ENGINE_VERSION } from './engineVersion.ts'
import { rowLayout } from './runRow.ts'
import { sweepAnswer } from './sweepAnswer.ts'
import type { SweepResult } from './sweepResult.ts'
import { withCarriers } from './withCarriers.ts'
import { workingSeconds } from './workingSeconds.ts'

export class SweepAssembly {
  readonly counts: readonly number[]
  readonly studies: readonly CountStudy[]
  readonly #spec: LineSpec
  readonly #law: Law
  readonly #request: { readonly seed: string; readonly replications: number; readonly plan: number | null }

  /**
   * @param counts  numbers of carriers to try; put in order, each once
   * @throws RangeError  if there is no count, one that the line cannot take, or fewer than 1 replication
   */
  constructor(spec: LineSpec, counts: readonly number[], request: { seed: string; replications: number; plan: number | null }) {
    if (counts.length === 0) throw new RangeError('a sweep needs at least one number of carriers')
    if (!Number.isInteger(request.replications) || request.replications < 1) {
      throw new RangeError(`replications must be a whole number of at least 1, not ${request.replications}`)
    }
    this.counts = [...new Set(counts)].sort((a, b) => a - b)
    for (const count of this.counts) withCarriers(spec, count)
    const layout = rowLayout(spec)
    this.studies = this.counts.map((carriers) => new CountStudy(carriers, layout))
    this.#spec = spec
    this.#law = law(spec)
    this.#request = request
  }

  /** Half of the widest 95 % interval of a mean, over that mean; null while a count has fewer than 2 replications. */
  precision(): number | null {
    const halves = this.studies.map((study) => study.relativeHalfWidth())
    return halves.some((half) => half === null) ? null : Math.max(...halves.map((half) => half!))
  }

  result(): SweepResult {
    const { seed, replications, plan } = this.#request
    const counts = this.studies.map((study) => study.result(this.#spec, this.#law, plan))
    return {
      kind: 'carrier sweep',
      engineVersion: ENGINE_VERSION,
      seed,
      replications,
      partial: counts.some((count) => count.replications < replications),
      plan,
      window: this.#spec.window,
      law: this.#law,
      lawSeconds: this.#law.unitsPerLap * workingSeconds(this.#spec),
      counts,
      answer: sweepAnswer(counts),
    }
  }
}
