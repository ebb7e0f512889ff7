/** Who waits before a zone that several paths lead to, at quick instants (quick.ts). (MODEL.md §3) */
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { DONE } from '../state/moves.ts'
import { timeRest } from './quickRest.ts'
import type { Quick } from './quickZones.ts'

/** Whether somebody waits for the zone, or will be at rest before it. */
export function isWaitedForAtMerge(
  { graph: { feeders }, moves: { zoneCarrier, carrierPhase } }: Line,
  zone: number,
  restIsKnown: Uint8Array,
): boolean {
  for (let k = feeders.first[zone]!; k < feeders.first[zone + 1]!; k++) {
    const behind = zoneCarrier[feeders.items[k]!]!
    if (behind !== NONE && (carrierPhase[behind] === DONE || restIsKnown[behind] === 1)) return true
  }
  return false
}

export const SEVERAL = -2

/** The one place whose carrier stands before the merging zone that turns free now; NONE, or SEVERAL: then the merge decides. */
export function waitsToMerge(line: Line, quick: Quick, zone: number): number {
  const { now } = line
  const { feeders } = line.graph
  const { zoneCarrier, carrierPhase } = line.moves
  let found = NONE
  for (let k = feeders.first[zone]!; k < feeders.first[zone + 1]!; k++) {
    const place = feeders.items[k]!
    const carrier = zoneCarrier[place]!
    if (carrier === NONE) continue
    if (quick.restIsKnown[carrier] === 1) {
      if (quick.restAt[carrier]! > now) {
        timeRest(line, quick, carrier)
        continue
      }
    } else if (carrierPhase[carrier] !== DONE) continue
    if (found !== NONE) return SEVERAL
    found = place
  }
  return found
}
