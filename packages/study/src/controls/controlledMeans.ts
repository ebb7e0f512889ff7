/** Means of a line's studies with the luck of their worlds taken out. */
import type { LineSpec } from '@loopwright/line'
import { CONTROLS_FROM, type ShownMean, shownControls } from '@loopwright/stats/worlds'
import { withCarriers } from '../change/withCarriers.ts'
import { lineControls } from './lineControls.ts'
import type { RunUse } from './runUse.ts'

/** Replications 0 … n − 1 of one number of carriers. */
export interface UsedRuns {
  readonly carriers: number
  /** output per window, by replication */
  readonly units: readonly number[]
  /** what each used; empty: not known */
  readonly uses: readonly RunUse[]
  readonly gridlocks: number
}

/**
 * Mean output per window of each study, by the rule of `shownControls`; null where that shows no gain, and where a run stood still: such runs are of two kinds, and no mean tells them.
 *
 * @param seed  of the runs
 */
export function controlledMeans(spec: LineSpec, seed: string, studies: readonly UsedRuns[]): (ShownMean | null)[] {
  const told = studies.map(({ carriers, units, uses, gridlocks }) => ({
    line: withCarriers(spec, carriers),
    uses: units.length < CONTROLS_FROM || gridlocks > 0 || units.every((made) => made === units[0]) ? [] : uses,
  }))
  return lineControls(seed, told).map((controls, index) => (controls.length === 0 ? null : shownControls(studies[index]!.units, controls)))
}
