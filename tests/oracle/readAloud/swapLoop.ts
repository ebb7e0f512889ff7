/** The pure ring of the literature in the terms of the line model. */

import { type LineSpec, PLAIN_STATION } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { givenLoop } from './lineFor.ts'

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
  const loop = givenLoop(model.zones, Array(model.carriers).fill(0), model.moveSeconds, model.clearSeconds)
  const zones = [...new Set([0, ...model.tasks.map((task) => task.zone)])]
  return {
    ...loop,
    carriers: { ...loop.carriers, start: model.start },
    tasks: zones.map((zone) => `work in ${zone}`),
    stations: zones.map((zone, index) => {
      const time = model.tasks.find((task) => task.zone === zone)?.time
      return {
        name: `S${zone}`,
        title: `S${zone}`,
        zone,
        unload: zone === 0 ? [] : null,
        load: zone === 0 ? [] : null,
        work: time === undefined ? null : [{ task: index, seconds: [typeof time === 'number' ? { kind: 'constant', value: time } : time] }],
        releaseSeconds: { kind: 'constant', value: 0 },
        ...PLAIN_STATION,
      }
    }),
    window: { warmupSeconds, endSeconds: warmupSeconds + windowSeconds },
  }
}
