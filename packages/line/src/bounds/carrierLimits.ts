/** What the number of carriers lets through: too few of them, or too little room for them. (MODEL.md §12) */
import { REST, SPEED } from '../moves/motion.ts'
import type { LineSpec } from '../spec.ts'
import { type Flows, unitUse } from './flows.ts'
import type { Law } from './law.ts'
import { lawTerms } from './lawTerms.ts'
import { type Limit, type LimitReason, limitOf } from './limit.ts'
import { type PathTimes, pathTimes } from './pathTimes.ts'
import { breaksWithin, workingSeconds, windowSecondsOf } from './workingSeconds.ts'

/** On one closed loop by its law; elsewhere by the quickest way of a carrier with its product and back without one. */
export function carrierLimits(spec: LineSpec, flows: Flows, lineLaw: Law | null): Limit[] {
  const { count } = spec.carriers
  const windowSeconds = windowSecondsOf(spec)
  const net = workingSeconds(spec)
  const { lap, moving } = quickestLap(spec, flows)
  const breaks = breaksWithin(spec).reduce((sum, length) => sum + Math.min(length, moving), 0)
  const worksOn = spec.stations.some(({ worksInBreaks }) => worksInBreaks)
  const proven = lap > 0 ? (count * (worksOn ? windowSeconds : net + breaks)) / lap : null
  const word = count === 1 ? '1 carrier' : `${count} carriers`
  if (lineLaw === null || lineLaw.unitsPerLap === 0) {
    const limit = limitOf(spec, {
      kind: 'carriers',
      name: word,
      secondsPerUnit: lap,
      availableSeconds: net * count,
      provenPerWindow: proven,
      reasons: breaks > 0 ? ['breaks'] : [],
    })
    return limit === null ? [] : [limit]
  }
  const { spaceLimited } = lawTerms(lineLaw, count)
  const reasons: LimitReason[] = [...lineLaw.estimateReasons]
  const carriers = limitOf(spec, {
    kind: 'carriers',
    name: word,
    secondsPerUnit: Math.max(lineLaw.lapSeconds / lineLaw.unitsPerLap, lap),
    availableSeconds: net * count,
    provenPerWindow: lineLaw.exact ? (net * count * lineLaw.unitsPerLap) / lineLaw.lapSeconds : proven,
    reasons,
  })
  const space =
    spaceLimited === null || spaceLimited === 0
      ? null
      : limitOf(spec, {
          kind: 'space',
          name: `room for ${word}`,
          secondsPerUnit: 1 / spaceLimited / lineLaw.unitsPerLap,
          availableSeconds: net,
          provenPerWindow: lineLaw.exact ? net * spaceLimited * lineLaw.unitsPerLap : null,
          reasons,
        })
  return [carriers, space].filter((limit) => limit !== null)
}

/** Seconds per unit that one carrier takes at the least, and what of it is moving. */
function quickestLap(spec: LineSpec, flows: Flows): { lap: number; moving: number } {
  const times = pathTimes(spec)
  const way = (path: number, fromRest: boolean, toRest: boolean): number =>
    times[path]!.move[2 * (fromRest ? REST : SPEED) + (toRest ? REST : SPEED)]!
  const back = waysBack(spec, times)
  const end = (station: number): number => back[spec.stations[station]!.zone]!
  const lap = unitUse(flows, { stay: ({ workSeconds, releaseSeconds }) => workSeconds + releaseSeconds, way, end }).perUnit
  const moving = unitUse(flows, { way, end }).perUnit
  return { lap, moving: Math.max(moving, lap - unitUse(flows, { stay: (stay) => stay.workSeconds + stay.releaseSeconds }).perUnit) }
}

/** By zone: the quickest moves from there to a load station, seconds; 0 where there is one, or no way. The store, where there is one, is the last place. */
function waysBack(spec: LineSpec, times: readonly PathTimes[]): number[] {
  const zones = spec.zones.length
  const place = (end: number): number => (end < 0 ? zones : end)
  const seconds = new Array<number>(zones + 1).fill(Infinity)
  for (const { zone, load } of spec.stations) if (load !== null) seconds[zone] = 0
  for (let changed = true; changed; ) {
    changed = false
    // from the last path on: along a loop, whose paths stand in their order, one pass finds all
    for (let path = spec.paths.length - 1; path >= 0; path--) {
      const { from, to } = spec.paths[path]!
      const through = seconds[place(to)]! + times[path]!.move[2 * SPEED + SPEED]!
      if (through < seconds[place(from)]! - 1e-12) {
        seconds[place(from)] = through
        changed = true
      }
    }
  }
  return seconds.map((each) => (each === Infinity ? 0 : each))
}
