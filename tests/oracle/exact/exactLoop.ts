/** Rings whose output is exactly known, from the files beside this one to a LineSpec. */
import type { LineSpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { type StationWish, type StopWish, smallLoop } from '../../helpers/smallLoop.ts'
import type { ExactRing } from './exactCheck.ts'
import { timeOf, variantsOf } from './exactTime.ts'

/**
 * The loop of a check. The literature works on every carrier at every visit; here the station in the swap zone unloads and loads in no time,
 * so that every carrier leaves it with a new product, and each later station works on it once, with draws of its own.
 */
export function ringLoop(model: ExactRing, warmup: number, window: number): LineSpec {
  const { variants, mix, times } = variantsOf(model.tasks.map(({ time }) => time))
  const stations: StationWish[] = [...new Set([model.swapZone, ...model.tasks.map((task) => task.zone)])].map((zone) => {
    const task = model.tasks.findIndex((t) => t.zone === zone)
    return {
      at: zone,
      ...(zone === model.swapZone ? { unload: true as const, load: true as const } : {}),
      ...(task < 0 ? {} : { work: { [`work S${zone}`]: times[task]! } }),
    }
  })
  const isList = <T>(x: T | readonly T[]): x is readonly T[] => Array.isArray(x)
  const stops: StopWish[] = (model.breakdowns ?? []).map(({ zone, clock, timeToFailure, repair }) => ({
    name: `S${zone}`,
    on: { kind: 'station', index: stations.findIndex((station) => station.at === zone) },
    clock,
    after: timeOf(timeToFailure) as Distribution,
    repair: timeOf(repair) as Distribution,
  }))
  return smallLoop({
    odd: true, // of many no move takes any time
    zones: model.zones,
    start: model.start === 'spread' ? model.carriers : model.start,
    move: isList(model.moveSeconds) ? model.moveSeconds.map(timeOf) : timeOf(model.moveSeconds),
    clear:
      model.clearSeconds === 'move' ? 'move' : isList(model.clearSeconds) ? model.clearSeconds.map(timeOf) : timeOf(model.clearSeconds),
    stations,
    stops,
    ...(variants === 1 ? {} : { variants, mix }),
    warmup,
    until: warmup + window,
  })
}
