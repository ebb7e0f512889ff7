/** The factor on all work with which a line makes what was counted. */
import type { LineSpec } from '@loopwright/line'
import { meanOf } from '@loopwright/stats'
import { replicate } from '../runs/replicate.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'
import { longerWork } from './runTrials.ts'

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
 * @param units         counted, per window, > 0
 * @param replications  of each step, ≥ 2
 * @example (await recalibrate(line, 121, { replications: 2 }, { seed: '1', workers: 0 })).found // => true
 */
export async function recalibrate(
  line: LineSpec,
  units: number,
  { replications }: { readonly replications: number },
  options: StudyOptions,
): Promise<Recalibration> {
  const { onProgress: _, ...quiet } = options
  const made = async (factor: number): Promise<number> => {
    const runs = await replicate(longerWork(line, factor), { replications }, quiet)
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
