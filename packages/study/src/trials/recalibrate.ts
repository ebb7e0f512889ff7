/** The factor on all work with which a line makes what was counted. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { meanOf } from '@loopwright/stats'
import { workOf } from '../runs/openPool.ts'
import { replicate } from '../runs/replicate.ts'
import { onSameThreads, partOf } from '../runs/sameThreads.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'
import { longerWork } from './runTrials.ts'

/** What is asked of a recalibration. */
export interface RecalibrationRequest {
  /** counted, per window, > 0 */
  readonly units: number
  /** of each step of the search, ≥ 2 */
  readonly replications: number
}

/** The same line with the output that was counted. */
export interface Recalibration {
  /** of the work of all tasks; 1: as it is */
  readonly factor: number
  /** mean output per window with it */
  readonly units: number
  /** within what one step of the search leaves: false where no factor looked at gives the output */
  readonly found: boolean
}

const LEAST = 0.6
const MOST = 1.8
const STEPS = 9

/**
 * Looks for the factor in the same worlds: with longer work a line makes less.
 *
 * @example (await recalibrate(line, { units: 121, replications: 2 }, { seed: '1', workers: 0 })).found // => true
 */
export async function recalibrate(given: GivenLine, request: RecalibrationRequest, options: StudyOptions): Promise<Recalibration> {
  const line = completeLine(given)
  const total = (2 + STEPS + 1) * request.replications
  const work = workOf(line, [{ carriers: line.carriers.count, replications: total }])
  return await onSameThreads(options, work, (same) => search(line, request, same, total))
}

async function search(
  line: LineSpec,
  { units, replications }: RecalibrationRequest,
  options: StudyOptions,
  total: number,
): Promise<Recalibration> {
  let done = 0
  const made = async (factor: number): Promise<number> => {
    const before = done
    done += replications
    const runs = await replicate(longerWork(line, factor), { replications }, partOf(options, before, total))
    return runs.length === 0 ? 0 : meanOf(runs.map(({ output }) => output))
  }
  let [low, high] = [LEAST, MOST]
  const ends = [await made(low), await made(high)] as const
  if (units > ends[0]) return { factor: low, units: ends[0], found: false }
  if (units < ends[1]) return { factor: high, units: ends[1], found: false }
  for (let step = 0; step < STEPS && options.signal?.aborted !== true; step++) {
    const middle = (low + high) / 2
    if ((await made(middle)) > units) low = middle
    else high = middle
  }
  const factor = (low + high) / 2
  return { factor, units: await made(factor), found: true }
}
