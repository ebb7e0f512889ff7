/** Lines of which something is exactly known, from the files beside this one to a LineSpec. */
import type { LineSpec, SupplySpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { chain, smallGraph } from '../../helpers/smallGraph.ts'
import { seconds, smallLoop } from '../../helpers/smallLoop.ts'
import type { ExactCheck, ExactDelay, ExactQueue, ExactServers, ExactSlots, ExactTime } from './exactCheck.ts'
import { ringLoop } from './exactLoop.ts'
import { geometric, timeOf, variantsOf } from './exactTime.ts'

/** The line of a check. */
export function exactLine({ model }: ExactCheck, warmup: number, window: number): LineSpec {
  if ('supply' in model) return queueLoop(model, warmup, window)
  if ('servers' in model) return serverLoops(model, warmup, window)
  if ('delaySecondsPerLap' in model) return delayLine(model, warmup, window)
  if ('bufferPlaces' in model) return slotLoop(model, warmup, window)
  return ringLoop(model, warmup, window)
}

const arriving = (interArrival: ExactTime): SupplySpec => ({
  name: 'supply',
  arrivals: { kind: 'every', seconds: seconds(timeOf(interArrival)) },
  queueLimit: null,
})

/** The load station is the server: nothing else takes time, so an empty carrier stands there whenever it is free. */
function queueLoop({ zones, carriers, stations: [load, unload], supply }: ExactQueue, warmup: number, window: number): LineSpec {
  const { variants, mix, times } = variantsOf([load.load])
  const loop = smallLoop({
    zones,
    start: carriers,
    odd: true, // no move takes any time
    move: 0,
    clear: 0,
    stations: [
      { at: load.zone, load: { work: times[0]! } },
      { at: unload.zone, unload: true },
    ],
    ...(variants === 1 ? {} : { variants, mix }),
    warmup,
    until: warmup + window,
  })
  return { ...loop, supply: arriving(supply.interArrival) }
}

/** Each server is a load station in a small loop of its own, whose carrier comes back in no time; all share the queue of the line. */
function serverLoops({ servers, service, interArrival }: ExactServers, warmup: number, window: number): LineSpec {
  const zones = Array.from({ length: servers }, (_, k) => 2 * k)
  const line = smallGraph({
    zones: 2 * servers,
    start: zones,
    paths: zones.flatMap((zone) => chain(zone, zone + 1, zone)),
    stations: zones.map((at) => ({ at, unload: true as const, load: timeOf(service) })),
    move: 0,
    clear: 0,
    warmup,
    until: warmup + window,
  })
  return { ...line, supply: arriving(interArrival) }
}

/**
 * The delay is the move into one of as many parallel lanes as there are carriers, which leaves the zone behind it free at once; a carrier waits in its lane, and
 * the one that has waited longest goes on first. Between two stations there is room for all others.
 */
function delayLine({ meanTimes, carriers, delaySecondsPerLap }: ExactDelay, warmup: number, window: number): LineSpec {
  const at = meanTimes.map((_, k) => carriers + k * carriers)
  const [first, last] = [at[0]!, at[at.length - 1]!]
  const lanes = Array.from({ length: carriers }, (_, lane) => lane)
  return smallGraph({
    zones: last + 1,
    start: { count: carriers, rule: 'spread' },
    paths: [
      ...lanes.map((to) => ({ from: last, to, move: delaySecondsPerLap })),
      ...lanes.map((from) => ({ from, to: first })),
      ...chain(...Array.from({ length: last - first + 1 }, (_, k) => first + k)),
    ],
    diverts: { [last]: 'free' },
    stations: meanTimes.map((mean, k) => ({
      at: at[k]!,
      ...(k === 0 ? { unload: true as const, load: true as const } : {}),
      work: { kind: 'exponential', mean } as const,
    })),
    move: 0,
    clear: 0,
    warmup,
    until: warmup + window,
  })
}

/** one tick of the clock */
const TICK = 2 ** -20

/**
 * Slots are seconds: work takes 1 s, and a repair whole seconds. A machine can fail only in a slot in which it would work, so the clock is that of the work; it fails a
 * little after the start of the slot, by as many ticks as it has failed before, and the part it works on is done a slot later than the repair ends in it.
 */
function slotLoop({ failureProbability, repairProbability, bufferPlaces }: ExactSlots, warmup: number, window: number): LineSpec {
  const machines = [0, bufferPlaces - 1]
  const loop = ringLoop(
    {
      zones: 2 * bufferPlaces,
      carriers: bufferPlaces,
      start: 'spread',
      swapZone: 0,
      tasks: machines.map((zone) => ({ zone, time: 1 })),
      moveSeconds: 0,
      clearSeconds: 0,
      breakdowns: machines.map((zone, k) => ({
        zone,
        clock: 'operating',
        timeToFailure: 1,
        repair: { dist: 'geometric', p: repairProbability[k]! },
      })),
    },
    warmup,
    window,
  )
  const later = (p: number): Distribution => {
    const slots = geometric(p) as Distribution & { readonly kind: 'discrete' }
    return { ...slots, values: slots.values.map((value) => value + TICK) }
  }
  return {
    ...loop,
    breakdowns: loop.breakdowns.map((breakdown, k) => ({ ...breakdown, timeToFailureSeconds: later(failureProbability[k]!) })),
  }
}
