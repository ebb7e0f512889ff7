/** The counts that are tested in a carrier study, and the walk down over them. */
import { binomialEstimate, pairedLowerLimit } from '@loopwright/stats'
import type { CarrierStudy, PlanCount } from './carrierStudyResult.ts'
import type { CountStudy } from './countStudy.ts'
import { type Candidate, pilotBest, type Rule, sweepAnswer } from './sweepAnswer.ts'
import type { Counts } from './sweepAssembly.ts'
import type { SweepAnswer } from './sweepResult.ts'

const PLAN_SHARE = 0.9

export class Walk {
  /** where it begins */
  readonly reference: number
  readonly #tested = new Set<number>()
  readonly #judged: Counts

  /**
   * @param pilot   chooses the reference, and rules out counts whose mean is shown to be more than twice `within` below its
   * @param judged  the runs that are tested: in other worlds than the pilot's
   * @param rule    alpha: chance that a count is ruled out which is not below the reference at all
   */
  constructor(pilot: readonly CountStudy[], judged: Counts, { within, alpha }: Required<Rule>) {
    this.reference = pilotBest(pilot)
    this.#judged = judged
    const best = pilot.find(({ carriers }) => carriers === this.reference)!.units
    const level = 1 - alpha / pilot.length
    for (const { carriers, units } of pilot) {
      const below = units.map((made, j) => (1 - 2 * within) * best[j]! - made)
      if (carriers === this.reference || pairedLowerLimit(below, level).low <= 0) this.#tested.add(carriers)
    }
  }

  has(carriers: number): boolean {
    return this.#tested.has(carriers)
  }

  /** Adds a count to those that are tested. */
  add(carriers: number): void {
    this.#tested.add(carriers)
    this.#judged.of(carriers)
  }

  /** Null while a count that is tested has fewer than 2 replications. */
  answer(rule: Rule): SweepAnswer | null {
    const tested = this.#candidates()
    const answer = sweepAnswer(tested, this.reference, rule)
    if (answer === null) return null
    const all = this.#judged.all()
    return {
      ...answer,
      bestAtUpperEnd: answer.best === all.at(-1)!.carriers,
      chosenAtLowerEnd: answer.chosen === all[0]!.carriers,
    }
  }

  /** One fewer than the smallest count tested, where that one is confirmed; null: the walk ends higher up, or nothing is left below. */
  downTo(rule: Rule): number | null {
    const chosen = this.answer(rule)?.chosen ?? null
    return chosen !== null && chosen > 1 && chosen === this.#candidates()[0]!.carriers ? chosen - 1 : null
  }

  /** From the answer up to the last count that, one after the other, passes the test which the answer passed. */
  flat(rule: Rule): CarrierStudy['flat'] {
    const answer = this.answer(rule)
    if (answer === null || answer.chosen === null) return null
    const tested = this.#candidates()
    let to = Math.max(answer.chosen, this.reference)
    for (const { carriers } of tested.filter((count) => count.carriers > to)) {
      if (carriers !== to + 1 || sweepAnswer(tested, carriers, rule)!.chosen === null) break
      to = carriers
    }
    return { from: answer.chosen, to }
  }

  /** See `PlanCount`. */
  planCount(plan: number, level: number): PlanCount | null {
    const judged = this.#judged
      .all()
      .filter(({ units, gridlocks }) => units.length > 0 && gridlocks === 0)
      .map(({ carriers, units }) => ({
        carriers,
        estimate: binomialEstimate(units.filter((made) => made >= plan).length, units.length, level),
      }))
    const first = judged.find(({ estimate }) => estimate.share >= PLAN_SHARE)
    const nearest = judged.toSorted((a, b) => b.estimate.share - a.estimate.share || a.carriers - b.carriers)[0]
    const shown = first ?? nearest
    if (shown === undefined) return null
    const { share, low, high } = shown.estimate
    const verdict = low >= PLAN_SHARE ? 'shown' : share >= PLAN_SHARE ? 'likely' : high >= PLAN_SHARE ? 'not shown' : 'shown not'
    return { ...shown, verdict }
  }

  #candidates(): Candidate[] {
    return this.#judged
      .all()
      .filter(({ carriers }) => this.has(carriers))
      .map(({ carriers, units, gridlocks }) => ({ carriers, units, gridlocks, meetsPlan: null }))
  }
}
