/** Which numbers of carriers meet the plan, settled while runs come in: who is in question, how far each is run, and what each look may claim. */
import type { ChanceVerdict, ChanceWord } from '@loopwright/stats'
import { chanceLooks, nextLook } from '@loopwright/stats/procedures'
import { type CountStudy, metPlan, planVerdict } from '../sweep/countStudy.ts'
import { questioned } from '../sweep/planAnswer.ts'

/** chance that any count is told to be on the wrong side of nine of ten, over all counts and looks */
const ERROR = 0.05
/** of it, for the counts that the pilot leaves near the border; the rest is for all others, tried or not */
const NEAR_PART = 0.8
/** pilot runs that meet the plan, as a share: below, a chance of nine of ten is out of the question (less than 1 in 1,000 with 15 runs, own calculation) */
const NEAR_SHARE = 0.6
/** difference of chances in the same worlds from which on a count is worth more runs */
const WORTHWHILE = 0.01

type Judged = Pick<CountStudy, 'carriers' | 'units'> & { readonly verdict: ChanceWord }

export class PlanSettlement {
  readonly #plan: number
  readonly #chance: boolean
  readonly #near: ReadonlySet<number>
  readonly #possible: number

  /**
   * @param pilot     in worlds of their own, so that what is claimed never also chooses how surely it must be known
   * @param possible  numbers of carriers that the line can take
   * @param plan      units wanted per window
   * @param chance    false: one run tells all
   */
  constructor(pilot: readonly CountStudy[], possible: number, plan: number, chance: boolean) {
    this.#plan = plan
    this.#chance = chance
    this.#possible = possible
    this.#near = new Set(pilot.filter(({ units }) => metPlan(units, plan) >= NEAR_SHARE * units.length).map(({ carriers }) => carriers))
  }

  /** Null below 20 replications, or without any where nothing is left to chance. */
  verdict({ carriers, units }: CountStudy): ChanceVerdict | null {
    if (!this.#chance) return planVerdict(units, this.#plan, false)
    const others = Math.max(1, this.#possible - this.#near.size)
    const alpha = this.#near.has(carriers) ? (NEAR_PART * ERROR) / this.#near.size : ((1 - NEAR_PART) * ERROR) / others
    return chanceLooks(
      units.map((made) => made >= this.#plan),
      alpha,
    )
  }

  /**
   * Counts that need more runs, with as many as they need in all: the smallest that may meet the plan, its neighbours, and, where that is not shown, one above that
   * promises more. Empty: settled, or as far as `most` allows.
   *
   * @param judged  ascending by carriers
   * @param most    replications of a count
   */
  wanted(judged: readonly CountStudy[], most: number): ReadonlyMap<number, number> {
    if (!this.#chance) return new Map()
    const moving = judged
      .filter(({ gridlocks, units }) => gridlocks === 0 && units.length > 0)
      .map((study) => ({ carriers: study.carriers, units: study.units, verdict: this.verdict(study)?.verdict ?? 'open' }))
    const deciding = questioned(moving)
    const wanted = open(deciding, most)
    if (deciding.length === 0 || wanted.size > 0 || deciding.some(({ verdict }) => verdict === 'met')) return wanted
    const better = this.#better(moving.slice(moving.indexOf(deciding.at(-1)!) + 1), deciding)
    return better === null ? wanted : open([better], most)
  }

  /** Of the counts above those in question the one that meets the plan most often in the worlds that it shares with the best of them; null: none does by a point more. */
  #better(above: readonly Judged[], deciding: readonly Judged[]): Judged | null {
    let better: Judged | null = null
    let most = WORTHWHILE
    for (const count of above) {
      const gain = Math.min(...deciding.map(({ units }) => this.#gain(count.units, units)))
      if (count.verdict === 'open' && gain >= most) {
        better = count
        most = gain
      }
    }
    return better
  }

  /** Share of windows that meet the plan, less that of another count, in the worlds of both. */
  #gain(units: readonly number[], others: readonly number[]): number {
    const n = Math.min(units.length, others.length)
    return (metPlan(units.slice(0, n), this.#plan) - metPlan(others.slice(0, n), this.#plan)) / n
  }
}

/** Counts that are open, with the replications of their next look. */
function open(counts: readonly Judged[], most: number): Map<number, number> {
  const wanted = new Map<number, number>()
  for (const { carriers, units, verdict } of counts) {
    const next = nextLook(units.length)
    if (verdict === 'open' && next !== null && next <= most) wanted.set(carriers, next)
  }
  return wanted
}

/** Whether the pilot runs of a count leave open that fewer carriers meet the plan too. */
export function mayNeedFewer({ units }: CountStudy, plan: number | null): boolean {
  return plan !== null && metPlan(units, plan) >= units.length / 2 && units.length > 0
}
