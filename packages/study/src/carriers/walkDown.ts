/** The counts that are tested in a carrier study, and the walk down over them. */
import { pairedLowerLimit } from '@loopwright/stats/worlds'
import type { CarrierStudy } from './carrierStudyResult.ts'
import type { CountStudy } from '../sweep/countStudy.ts'
import { type Candidate, pilotBest, type Rule, sweepAnswer } from '../sweep/sweepAnswer.ts'
import type { Counts } from '../sweep/sweepAssembly.ts'
import type { SweepAnswer } from '../sweep/sweepResult.ts'

/** What one look may claim. */
export interface WalkRule extends Required<Rule> {
  /** chance of error spent on the counts other than the reference, where that one is not confirmed: all of them together */
  readonly elsewhere: number
}

/** From the reference of the pilot down to the smallest count that is near enough. */
export class WalkDown {
  /** where it begins */
  readonly reference: number
  readonly #tested = new Set<number>()
  /** tested from the beginning, without the reference */
  readonly #others: readonly number[]
  readonly #judged: Counts

  /**
   * @param pilot   chooses the reference, and rules out counts whose mean is shown to be more than twice `within` below its
   * @param judged  the runs that are tested: in other worlds than the pilot's
   * @param rule    alpha: chance that a count is ruled out which is not below the reference at all
   */
  constructor(pilot: readonly CountStudy[], judged: Counts, { within, alpha, certain }: Required<Rule>) {
    this.reference = pilotBest(pilot)
    this.#judged = judged
    const best = pilot.find(({ carriers }) => carriers === this.reference)!.units
    const level = 1 - alpha / pilot.length
    for (const { carriers, units } of pilot) {
      const below = units.map((made, j) => (1 - 2 * within) * best[j]! - made)
      const low = certain ? below[0]! : pairedLowerLimit(below, level).low
      if (carriers === this.reference || low <= 0) this.#tested.add(carriers)
    }
    this.#others = [...this.#tested].filter((carriers) => carriers !== this.reference)
  }

  has(carriers: number): boolean {
    return this.#tested.has(carriers)
  }

  /** Adds a count to those that are tested. */
  add(carriers: number): void {
    this.#tested.add(carriers)
    this.#judged.of(carriers)
  }

  /**
   * The answer of the walk down from the reference. Where the reference is not confirmed, because the pilot was mistaken or it stood still, each of the others is
   * tested by itself, with an equal part of `elsewhere`; the smallest that passes is the answer then.
   *
   * @returns null while a count that is tested has fewer than 2 replications
   */
  answer(rule: WalkRule): SweepAnswer | null {
    const tested = this.#candidates()
    const answer = this.#down(tested, rule)
    if (answer === null) return null
    const all = this.#judged.all()
    return {
      ...answer,
      bestAtUpperEnd: answer.best === all.at(-1)!.carriers,
      chosenAtLowerEnd: answer.chosen === all[0]!.carriers,
    }
  }

  #down(tested: readonly Candidate[], rule: WalkRule): SweepAnswer | null {
    const answer = sweepAnswer(tested, this.reference, rule)
    if (answer === null || answer.chosen !== null) return answer
    const alpha = rule.elsewhere / this.#others.length
    for (const carriers of this.#others) {
      const found = sweepAnswer(tested, carriers, { ...rule, alpha })
      if (found !== null && found.chosen !== null) return { ...found, reference: this.reference }
    }
    return answer
  }

  /** One fewer than the smallest count tested, where that one is confirmed; null: the walk ends higher up, or nothing is left below. */
  downTo(rule: WalkRule): number | null {
    const chosen = this.answer(rule)?.chosen ?? null
    return chosen !== null && chosen > 1 && chosen === this.#candidates()[0]!.carriers ? chosen - 1 : null
  }

  /** From the answer up to the last count that, one after the other, passes the test which the answer passed. */
  flat(answer: SweepAnswer | null, rule: WalkRule): CarrierStudy['flat'] {
    const from = answer?.chosen ?? null
    if (from === null) return null
    const tested = this.#candidates()
    let to = from
    for (const { carriers } of tested.filter((count) => count.carriers > to)) {
      if (carriers !== to + 1 || sweepAnswer(tested, carriers, rule)!.chosen === null) break
      to = carriers
    }
    return { from, to }
  }

  #candidates(): Candidate[] {
    return this.#judged
      .all()
      .filter(({ carriers }) => this.has(carriers))
      .map(({ carriers, units, gridlocks }) => ({ carriers, units, gridlocks }))
  }
}
