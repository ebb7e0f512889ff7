/** A carrier sweep while its rows come in, and the result made of them: shared by sweeps and carrier studies. */
import type { LineSpec } from '@loopwright/line'
import { lawOrNull, workingSeconds } from '@loopwright/line/bounds'
import { controlledMeans } from '../controls/controlledMeans.ts'
import { type RunUse, runUseOf } from '../controls/runUse.ts'
import { CountStudy } from './countStudy.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { planAnswer } from './planAnswer.ts'
import { type RowLayout, rowLayout } from '../runs/runRow.ts'
import type { SweepAnswer, SweepCount, SweepResult } from './sweepResult.ts'
import { withCarriers } from '../change/withCarriers.ts'

export interface SweepRequest {
  readonly seed: string
  readonly replications: number
  readonly plan: number | null
  /** it ends within a second then, and tells plain means; default false */
  readonly stopped?: boolean
}

/** replications of the pilot, for each count */
export const PILOT_REPLICATIONS = 15
/** The pilot has random worlds of its own, so that what chooses the reference never also tests it. */
export const pilotSeed = (seed: string): string => `${seed}-pilot`

/** The studies of several counts in the worlds of one seed; counts can be added. */
export class Counts {
  readonly seed: string
  readonly #layout: RowLayout
  readonly #useOf: (row: Float64Array) => RunUse
  readonly #studies = new Map<number, CountStudy>()

  constructor(spec: LineSpec, seed: string) {
    this.seed = seed
    this.#layout = rowLayout(spec)
    this.#useOf = runUseOf(spec, this.#layout)
  }

  /** The study of a count, made at its first mention. */
  of(carriers: number): CountStudy {
    const study = this.#studies.get(carriers) ?? new CountStudy(carriers, this.#layout, this.#useOf)
    this.#studies.set(carriers, study)
    return study
  }

  /** Ascending by carriers. */
  all(): CountStudy[] {
    return [...this.#studies.values()].sort((a, b) => a.carriers - b.carriers)
  }

  /** Half of the widest 95 % interval of a mean, over that mean; null while a count has fewer than 2 replications. */
  precision(): number | null {
    const halves = this.all().map((study) => study.relativeHalfWidth())
    return halves.length === 0 || halves.some((half) => half === null) ? null : Math.max(...halves.map((half) => half!))
  }
}

/** Mean output of the replications that are in; 0 where there is none. */
export const meanUnits = ({ tally, layout }: CountStudy): number => tally.means[layout.units]!

/**
 * Numbers of carriers to try: in order, each once.
 *
 * @throws RangeError  if there is none, or one that the line cannot take
 */
export function checkedCounts(spec: LineSpec, counts: readonly number[]): number[] {
  if (!Array.isArray(counts) || counts.length === 0) throw new RangeError('a sweep needs at least one number of carriers')
  const sorted = [...new Set(counts)].sort((a, b) => a - b)
  for (const count of sorted) withCarriers(spec, count)
  return sorted
}

/**
 * The result of the rows that are in.
 *
 * @param answer  made of the counts; null where it cannot be
 */
export function sweepResult(
  spec: LineSpec,
  studies: readonly CountStudy[],
  request: SweepRequest,
  answer: (counts: readonly SweepCount[]) => SweepAnswer | null,
): SweepResult {
  const { seed, replications, plan, stopped = false } = request
  const lineLaw = lawOrNull(spec)
  const controlled = stopped ? [] : controlledMeans(spec, seed, studies)
  const counts = studies.map((study, index) => study.result(spec, lineLaw, plan, controlled[index]))
  return {
    kind: 'carrier sweep',
    engineVersion: ENGINE_VERSION,
    seed,
    replications,
    chance: lineHasChance(spec),
    partial: counts.some((count) => count.replications < replications),
    plan,
    window: spec.window,
    law: lineLaw,
    lawSeconds: (lineLaw?.unitsPerLap ?? 1) * workingSeconds(spec),
    counts,
    answer: answer(counts),
    planAnswer: planAnswer(counts),
  }
}
