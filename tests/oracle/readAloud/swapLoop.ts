/** The pure ring of the literature in the terms of the line model. */

import type { Duty, LineSpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { specOf } from '../../../packages/line/src/builder/lineSpec.ts'
import { pathsWith } from './lineFor.ts'

export interface SwapLoop {
  readonly zones: number
  readonly carriers: number
  readonly start: 'spread' | readonly number[]
  readonly tasks: readonly { readonly zone: number; readonly time: Distribution | number }[]
  readonly moveSeconds: Distribution | number | readonly (Distribution | number)[]
  readonly clearSeconds: 'move' | Distribution | number | readonly (Distribution | number)[]
}

/**
 * Zone 0 has one station that unloads and loads in 0 s, so that every carrier leaves it with a new product and each later station works on it once.
 * Output = products unloaded = move starts out of zone 0.
 */
export function swapLoop(model: SwapLoop, warmupSeconds: number, windowSeconds: number): LineSpec {
  const { moveSeconds, clearSeconds } = model
  const zones = [...new Set([0, ...model.tasks.map((task) => task.zone)])]
  const workIn = (zone: number): { readonly work?: Duty } => {
    const time = model.tasks.find((task) => task.zone === zone)?.time
    return time === undefined ? {} : { work: { [`work in ${zone}`]: time } }
  }
  // not by loopLine, which refuses moves of 0 s: with stations that take time they have an exact answer
  return specOf('loop', {
    ...pathsWith(model.zones, moveSeconds, clearSeconds),
    carriers: { count: model.carriers, start: model.start },
    tasks: zones.map((zone) => `work in ${zone}`),
    stations: Object.fromEntries(
      zones.map((zone) => [`S${zone}`, { zone, ...(zone === 0 ? { unload: {}, load: {} } : {}), ...workIn(zone) }]),
    ),
    warmup: warmupSeconds,
    end: warmupSeconds + windowSeconds,
  }).spec
}
