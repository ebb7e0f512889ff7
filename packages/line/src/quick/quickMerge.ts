/** Who waits before a zone that several paths lead to, at quick instants (quick.ts). (MODEL.md §3) */
import { goesBefore } from '../moves/merge.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { DONE } from '../state/moves.ts'
import { makeRest, timeRest } from './quickRest.ts'
import { QUICK, type Quick } from './quickZones.ts'

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

/** Several wait, and who goes first is not for here to say. */
export const SEVERAL = -2

/** The place whose carrier has the right of way into the merging zone that turns free now: the only one that waits, or the first by the rule of the merge; NONE, or SEVERAL. */
export function waitsToMerge(line: Line, quick: Quick, zone: number): number {
  const { now } = line
  const { feeders, onlyOut } = line.graph
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
      makeRest(line, quick, carrier)
    } else if (carrierPhase[carrier] !== DONE) continue
    if (found === NONE) found = place
    else if (!mayCompare(line, quick, place) || !mayCompare(line, quick, found)) return SEVERAL
    else if (goesBefore(line, onlyOut[place]!, onlyOut[found]!)) found = place
  }
  return found
}

/** Whether the carrier in the place, which is done, can start into the zone before it as soon as that is free. */
function mayCompare({ graph, stops }: Line, { flags, mayHold }: Quick, place: number): boolean {
  return (flags[place]! & QUICK) > 0 && graph.onlyOut[place] !== NONE && !(mayHold && stops.zoneHeld[place]! > 0)
}
