/** Trials of an acceptance: the first hours of the judged stretch, of the line as it is and of the same line with longer work, counted at each look. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { scaledTimes } from '@loopwright/stats'
import { checkReplications } from '../runs/asked.ts'
import { withTaskTimes } from '../change/lineChange.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { workOfLines } from '../runs/openPool.ts'
import { replicate } from '../runs/replicate.ts'
import { onSameThreads, partOf } from '../runs/sameThreads.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** What is asked of trials. */
export interface TrialsRequest {
  /** length of a trial, breaks included; within the judged stretch */
  readonly seconds: number
  /** from one look to the next; the last look is the end */
  readonly lookSeconds: number
  /** of the slower line: each task takes so much longer, a share > 0 */
  readonly longer: number
  /** trials of each line, ≥ 2 */
  readonly replications: number
}

/** Counts of simulated trials. */
export interface TrialsResult {
  readonly kind: 'trials'
  readonly engineVersion: string
  readonly seed: string
  readonly replications: number
  readonly partial: boolean
  readonly seconds: number
  /** seconds from the start of the trial */
  readonly looks: readonly number[]
  readonly longer: number
  /** units at each look, by trial */
  readonly healthy: readonly (readonly number[])[]
  readonly slower: readonly (readonly number[])[]
}

/**
 * The same line with work that takes longer.
 *
 * @param factor  of all tasks, or of those of each station by its name; > 0
 * @throws RangeError  if one is not
 * @example longerWork(line, 1.1).stations.length === line.stations.length // => true
 */
export function longerWork(given: GivenLine, factor: number | ReadonlyMap<string, number>): LineSpec {
  const line = completeLine(given)
  for (const by of typeof factor === 'number' ? [factor] : factor.values())
    if (!(by > 0 && by < Number.POSITIVE_INFINITY)) throw new RangeError(`work takes longer by a factor above 0, not ${by}`)
  return withTaskTimes(line, (times, { station }) => {
    const by = typeof factor === 'number' ? factor : (factor.get(line.stations[station]!.name) ?? 1)
    return times === null || by === 1 ? times : scaledTimes(times, by)
  })
}

const hours = (seconds: number): string => `${Number((seconds / 3600).toPrecision(4))} h`
const minutes = (seconds: number): string => `${Number((seconds / 60).toPrecision(4))} min`

/**
 * Simulates trials of a line, and of the same line with longer work.
 *
 * @throws RangeError  if the trial is longer than the judged stretch, or a look longer than the trial
 * @example (await runTrials(line, { seconds: 1800, lookSeconds: 900, longer: 0.1, replications: 2 }, { seed: '1', workers: 0 })).looks // => [900, 1800]
 */
export async function runTrials(given: GivenLine, request: TrialsRequest, options: StudyOptions): Promise<TrialsResult> {
  const line = completeLine(given)
  const { seconds, lookSeconds, longer, replications } = request
  const { warmupSeconds, endSeconds } = line.window
  checkReplications(replications, 'trials need')
  if (!(seconds > 0) || seconds > endSeconds - warmupSeconds)
    throw new RangeError(`a trial of ${hours(seconds)} does not fit into the judged stretch of ${hours(endSeconds - warmupSeconds)}`)
  if (!(lookSeconds > 0) || lookSeconds > seconds)
    throw new RangeError(`a look every ${minutes(lookSeconds)} does not fit into a trial of ${minutes(seconds)}`)
  if (!(longer > 0)) throw new RangeError(`the slower line takes longer by a share above 0, not ${longer}`)
  const looks = [...Array.from({ length: Math.ceil(seconds / lookSeconds - 1e-9) - 1 }, (_, look) => (look + 1) * lookSeconds), seconds]
  const short: LineSpec = { ...line, window: { warmupSeconds, endSeconds: warmupSeconds + seconds } }
  const counts = async (of: LineSpec, same: StudyOptions): Promise<number[][]> =>
    (await replicate(of, { replications }, same)).map(({ outputSeconds }) =>
      looks.map((look) => outputSeconds.filter((instant) => instant <= warmupSeconds + look).length),
    )
  const slow = longerWork(short, 1 + longer)
  const [healthy, slower] = await onSameThreads(options, workOfLines([short, slow], replications), async (same) => {
    const first = await counts(short, partOf(same, 0, 2 * replications))
    return [first, options.signal?.aborted === true ? [] : await counts(slow, partOf(same, replications, 2 * replications))]
  })
  const partial = healthy.length < replications || slower.length < replications
  return {
    kind: 'trials',
    engineVersion: ENGINE_VERSION,
    seed: options.seed,
    replications,
    partial,
    seconds,
    looks,
    longer,
    healthy,
    slower,
  }
}
