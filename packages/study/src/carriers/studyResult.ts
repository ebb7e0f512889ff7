/** What a carrier study tells, made of its runs. */
import type { LineSpec } from '@loopwright/line'
import { pairedDifference } from '@loopwright/stats/worlds'
import type { CarrierStep, CarrierStudy, Look } from './carrierStudyResult.ts'
import { planAnswer } from '../sweep/planAnswer.ts'
import type { PlanSettlement } from './planSettlement.ts'
import { type Counts, meanUnits, PILOT_REPLICATIONS, sweepResult } from '../sweep/sweepAssembly.ts'
import type { SweepCount } from '../sweep/sweepResult.ts'
import type { WalkDown, WalkRule } from './walkDown.ts'

export interface StudyParts {
  readonly pilot: Counts
  readonly judged: Counts
  /** null: stopped before the pilot was done */
  readonly walk: WalkDown | null
  /** null without a plan, or as `walk` */
  readonly settlement: PlanSettlement | null
  readonly looks: readonly Look[]
  /** planned for the look that was last, or under way */
  readonly replications: number
  /** of the last look */
  readonly rule: WalkRule
  readonly plan: number | null
  readonly partial: boolean
}

/** A study that was stopped before anything was judged shows its pilot. */
export function studyResult(spec: LineSpec, parts: StudyParts): CarrierStudy {
  const { pilot, judged, walk, settlement, looks, rule, plan, partial, ...planned } = parts
  const judging = walk !== null && judged.all().some(({ units }) => units.length > 0)
  const shown = judging ? judged : pilot
  const replications = judging ? planned.replications : rule.certain ? 1 : PILOT_REPLICATIONS
  const answer = judging ? walk.answer(rule) : null
  const result = sweepResult(spec, shown.all(), { seed: shown.seed, replications, plan, stopped: partial }, () => answer)
  const counts = result.counts.map((count) => ({
    ...count,
    planVerdict: judging && settlement !== null ? settlement.verdict(judged.of(count.carriers)) : count.planVerdict,
  }))
  const answered = planAnswer(counts)
  return {
    ...result,
    counts,
    planAnswer: answered,
    kind: 'carrier study',
    partial,
    pilot: {
      seed: pilot.seed,
      replications: result.chance ? PILOT_REPLICATIONS : 1,
      counts: pilot.all().map((study) => ({ carriers: study.carriers, mean: meanUnits(study), gridlocks: study.gridlocks })),
      reference: walk?.reference ?? null,
      ruledOut: pilot.all().flatMap(({ carriers }) => (walk === null || walk.has(carriers) ? [] : [carriers])),
    },
    looks,
    settled: !partial && answer?.chosen != null && looks.at(-1)?.undecided === null,
    flat: judging ? walk.flat(answer, rule) : null,
    steps: steps(result.counts),
  }
}

function steps(counts: readonly SweepCount[]): CarrierStep[] {
  return counts.slice(1).flatMap((count, index) => {
    const before = counts[index]!
    const n = Math.min(before.units.length, count.units.length)
    if (n < 2 || count.carriers !== before.carriers + 1) return []
    return [{ from: before.carriers, to: count.carriers, difference: pairedDifference(count.units.slice(0, n), before.units.slice(0, n)) }]
  })
}
