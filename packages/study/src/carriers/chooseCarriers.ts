/** How many carriers the line needs: pilot, Procedure W, and as many runs as the answer takes. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { StatisticsError } from '@loopwright/stats'
import { finalReplications } from '@loopwright/stats/procedures'
import { checkPlan, checkReplications } from '../runs/asked.ts'
import type { CarrierStudy, Look } from './carrierStudyResult.ts'
import type { CountStudy } from '../sweep/countStudy.ts'
import { defaultCounts, mostCarriers } from './defaultCounts.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { openPool, refuseLong, workOf } from '../runs/openPool.ts'
import type { StudyOptions, StudyProgress } from '../runs/studyOptions.ts'
import { mayNeedFewer, PlanSettlement } from './planSettlement.ts'
import { studyResult } from './studyResult.ts'
import { missing, type Part, runParts } from '../sweep/runParts.ts'
import { LEVEL, pilotBest, WITHIN } from '../sweep/sweepAnswer.ts'
import { Counts, checkedCounts, meanUnits, PILOT_REPLICATIONS, pilotSeed } from '../sweep/sweepAssembly.ts'
import type { SweepAnswer } from '../sweep/sweepResult.ts'
import { WalkDown } from './walkDown.ts'

/** What the number of carriers is asked. */
export interface CarriersRequest {
  /** counts to begin with, at least one; default: around the law's lower knee. The study adds more where the best lies at an edge. */
  readonly counts?: readonly number[]
  /** share below the best that is near enough, above 0 and below 1; default 0.01 */
  readonly within?: number
  /** confidence of the answer, above 0 and below 1; default 0.95 */
  readonly level?: number
  /** most replications per count, ≥ 10; default 1000, and 2000 where that settles whether a count meets the plan */
  readonly replicationsMax?: number
  /** units wanted per window; default null: no plan */
  readonly plan?: number | null
}

/** The total may grow: more runs are planned where what is in does not decide. */
export interface CarriersProgress extends StudyProgress {
  /** what is being decided: which count makes most, or which is the smallest within reach of it */
  readonly deciding: 'best' | 'smallest'
  /** least and most carriers tried so far */
  readonly from: number
  readonly to: number
}

/** counts added at an edge at a time */
const WIDER = 3
/**
 * Look k has R₁·2^(k − 1) replications and spends LOOKS_SHARE/2^k of the chance of error on the walk down from the reference and ELSEWHERE_SHARE/2^k on the counts
 * beside it, should the reference fail; what is left is spent on the counts that the pilot rules out.
 */
const LOOKS_MAX = 5
const LOOKS_SHARE = 5 / 8
const ELSEWHERE_SHARE = 2 / 8
const RULED_OUT_SHARE = 1 - LOOKS_SHARE - ELSEWHERE_SHARE
/** enough to tell whether a chance is nine of ten, to ± 2 points */
const PLAN_REPLICATIONS_MAX = 2000
const FIRST_MIN = 20
/** the rule of `finalReplications` is met by the fourth look; most answers are settled before */
const FIRST_PART = 1 / 8
/** of counts that are out of the question: enough to draw the curve */
const CURVE_REPLICATIONS = 20
/** of the answer: enough for quantiles and chances */
const CLOSER_REPLICATIONS = 100

/**
 * The smallest number of carriers whose output is within a share of the best one's, with known confidence.
 *
 * Pilot runs choose the reference and rule out what is far below it; fresh runs, in other random worlds, are walked down from it (see `sweepAnswer`), and
 * looked at up to five times, each time with twice as many, until the answer is settled. Every look has its own part of the chance of error, so that the
 * answer is wrong with a chance of at most 1 − level. Where the reference fails, the counts beside it are tested, so that an answer is found above it too.
 *
 * Which counts meet the plan in nine of ten windows is settled by further runs of the counts that decide it, until for each the side is shown or its chance is
 * known to ± 2 points (see `chanceLooks`); a count is told to be on the wrong side with a chance of at most 5 in 100 over the whole study. The result is the same,
 * to the last bit, for any number of workers, with and without a store. Where nothing in the line is left to chance, one run of each count does.
 *
 * @param given  the line; its own number of carriers does not enter
 * @throws RangeError  if the line cannot take one of the counts, or within or level is no share
 * @example (await chooseCarriers(line, { counts: [2, 3, 4], replicationsMax: 40 }, { seed: '1', workers: 0 })).answer.chosen // => 3
 */
export async function chooseCarriers(
  given: GivenLine,
  request: CarriersRequest,
  options: StudyOptions<CarriersProgress>,
): Promise<CarrierStudy> {
  const spec = completeLine(given)
  const { within = WITHIN, level = LEVEL, replicationsMax = 1000, plan = null } = request
  const { seed, signal, onProgress } = options
  const chance = lineHasChance(spec)
  const pilots = chance ? PILOT_REPLICATIONS : 1
  checkShare('within', within)
  checkShare('level', level)
  checkReplications(replicationsMax)
  checkPlan(plan)
  const counts = checkedCounts(spec, request.counts ?? defaultCounts(spec))
  const least = chance ? PILOT_REPLICATIONS + CURVE_REPLICATIONS : 1
  refuseLong(
    options,
    workOf(
      spec,
      counts.map((carriers) => ({ carriers, replications: least })),
    ),
  )
  const pilot = new Counts(spec, pilotSeed(seed))
  const judged = new Counts(spec, seed)
  const { pool, close } = openPool(options)
  const progress = { done: 0, total: 0 }
  const run = async (of: Counts, wanted: (carriers: number) => number): Promise<void> => {
    const parts: Part[] = of.all().map((study) => ({ seed: of.seed, study, replications: wanted(study.carriers) }))
    progress.total += missing(parts)
    const deciding = of === pilot ? 'best' : 'smallest'
    const [from, to] = [of.all()[0]!.carriers, of.all().at(-1)!.carriers]
    const onRows = (came: number): void => {
      progress.done += came
      onProgress?.({ deciding, from, to, ...progress, settled: false, recalled: pool.recalled, precision: of.precision() })
    }
    await runParts(pool, spec, parts, { signal, onRows })
    if (missing(parts) > 0) throw new Stopped()
  }
  const looks: Look[] = []
  const rule = { within, level, alpha: 1 - level, elsewhere: 0, certain: !chance }
  let walk: WalkDown | null = null
  let settlement: PlanSettlement | null = null
  let replications = 0
  try {
    for (let more = counts; more.length > 0; more = wider(spec, pilot.all(), within, plan)) {
      for (const carriers of more) pilot.of(carriers)
      await run(pilot, () => pilots)
    }
    for (const { carriers } of pilot.all()) judged.of(carriers)
    walk = new WalkDown(pilot.all(), judged, { ...rule, alpha: RULED_OUT_SHARE * (1 - level) })
    if (plan !== null) settlement = new PlanSettlement(pilot.all(), spec.zones.length - 1, plan, chance)
    replications = chance ? firstReplications(pilot.all(), walk, within, 1 - level, replicationsMax) : 1
    let answer: SweepAnswer | null = null
    for (let look = 1; look <= LOOKS_MAX; look += 1) {
      rule.alpha = (LOOKS_SHARE * (1 - level)) / 2 ** look
      rule.elsewhere = (ELSEWHERE_SHARE * (1 - level)) / 2 ** look
      const wanted = (carriers: number): number => (walk!.has(carriers) ? replications : Math.min(replications, CURVE_REPLICATIONS))
      await run(judged, wanted)
      for (let next = walk.downTo(rule); next !== null; next = walk.downTo(rule)) {
        walk.add(next)
        await run(judged, wanted)
      }
      answer = walk.answer(rule)
      const undecided = undecidedCount(answer)
      looks.push({ replications, alpha: rule.alpha, chosen: answer?.chosen ?? null, undecided })
      if (undecided === null || replications >= replicationsMax || !chance) break
      if (look < LOOKS_MAX) replications = Math.min(replicationsMax, 2 * replications)
    }
    const told = answer?.chosen ?? walk.reference
    if (chance) await run(judged, (carriers) => (carriers === told ? Math.max(CLOSER_REPLICATIONS, replications) : 0))
    if (settlement !== null) {
      const most = Math.max(request.replicationsMax ?? PLAN_REPLICATIONS_MAX, CLOSER_REPLICATIONS)
      for (let more = settlement.wanted(judged.all(), most); more.size > 0; more = settlement.wanted(judged.all(), most)) {
        await run(judged, (carriers) => more.get(carriers) ?? 0)
      }
    }
  } catch (error) {
    if (!(error instanceof Stopped)) throw error
    return studyResult(spec, { pilot, judged, walk, settlement, looks, replications, rule, plan, partial: true })
  } finally {
    await close()
  }
  return studyResult(spec, { pilot, judged, walk, settlement, looks, replications, rule, plan, partial: false })
}

/** Thrown where runs are missing because the study was told to stop. */
class Stopped extends Error {}

/** Counts to add to the pilot: above while the best is the largest tried, below while the smallest may still be near enough, or may meet the plan. */
function wider(spec: LineSpec, pilot: readonly CountStudy[], within: number, plan: number | null): number[] {
  const [least, most] = [pilot[0]!, pilot.at(-1)!]
  const best = pilot.find((study) => study.carriers === pilotBest(pilot))!
  const bestMean = meanUnits(best)
  if (bestMean === 0) return []
  const above = best === most ? Math.min(WIDER, mostCarriers(spec) - most.carriers) : 0
  if (above > 0) return Array.from({ length: above }, (_, index) => most.carriers + 1 + index)
  const fewer = meanUnits(least) >= (1 - 2 * within) * bestMean || mayNeedFewer(least, plan)
  const below = fewer ? Math.min(WIDER, least.carriers - 1) : 0
  return Array.from({ length: below }, (_, index) => least.carriers - 1 - index)
}

/** By the spread of the pilot. */
function firstReplications(pilot: readonly CountStudy[], walk: WalkDown, within: number, alpha: number, most: number): number {
  const looked = pilot.filter(({ carriers, gridlocks }) => walk.has(carriers) && (gridlocks === 0 || carriers === walk.reference))
  const least = Math.min(FIRST_MIN, most)
  if (looked.length < 2 || looked.every((study) => meanUnits(study) === 0)) return least
  const table = { seed: 'pilot', counts: looked.map(({ carriers }) => carriers), outputs: looked.map(({ units }) => units) }
  try {
    return Math.min(most, Math.max(least, Math.ceil(FIRST_PART * finalReplications(table, within, alpha))))
  } catch (error) {
    if (error instanceof StatisticsError && error.code === 'E_PRECISION') return most
    throw error
  }
}

/** The count that more runs could still decide; null: none. */
function undecidedCount(answer: SweepAnswer | null): number | null {
  const failed = answer?.notConfirmed ?? null
  return failed === null || failed.reason === 'gridlock' || failed.shown ? null : failed.carriers
}

function checkShare(name: string, value: number): void {
  if (!(value > 0 && value < 1)) throw new RangeError(`${name} must be a share above 0 and below 1, not ${value}`)
}
