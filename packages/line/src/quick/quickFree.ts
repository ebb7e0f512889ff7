/** A zone that turns free at a quick instant (quick.ts): who waits for it starts. (MODEL.md §3, §4) */
import { assert } from '@loopwright/kernel'
import { waitFor } from '../moves/clear.ts'
import { pathThatStarts } from '../moves/move.ts'
import { endChange, startChange } from '../moves/transfer.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLEAR_NOW, DONE, FREE, VACATING } from '../state/moves.ts'
import { BACK } from '../state/transfers.ts'
import { SEVERAL, waitsToMerge } from './quickMerge.ts'
import { settleRest } from './quickRest.ts'
import { canLeave, isHeldAhead, waitsBehind } from './quickTransfer.ts'
import { AFTER_EXIT_CLEAR, CLEARS_ELSEWHERE, EXIT_CLEAR, MERGES, NOT_QUICK, QUICK, type Quick, TURNS } from './quickZones.ts'
import { settleFree } from './settle.ts'

/**
 * The zone is clear, or its transfer has turned back (`turned`); where several timers end, clears have been made. The path along which a carrier starts, NONE, or NOT_QUICK: then
 * nothing is done.
 */
export function turnFree(line: Line, quick: Quick, zone: number, turned: boolean, isAlone: boolean): number {
  const { moves, transfers } = line
  const { flags, before, mayHold } = quick
  const flag = flags[zone]!
  const from =
    (flag & AFTER_EXIT_CLEAR) > 0 ? waitsBehind(line, zone) : (flag & MERGES) > 0 ? waitsToMerge(line, quick, zone) : before[zone]!
  if (from === SEVERAL || (flag & CLEARS_ELSEWHERE) > 0 || (mayHold && line.stops.zoneHeld[zone]! > 0)) return NOT_QUICK
  const leaves = from !== NONE && waits(line, quick, from)
  if (leaves && ((flags[from]! & QUICK) === 0 || (mayHold && isHeldAhead(line, from)))) return NOT_QUICK
  line.events++
  if (turned) endChange(line, zone)
  if (isAlone) {
    moves.zoneClearing[zone] = CLEAR_NOW
    line.activity--
    if (!turned && (flag & TURNS) > 0 && transfers.backPosition[zone] !== transfers.zonePosition[zone]) {
      transfers.zoneChange[zone] = BACK
      startChange(line, zone, NONE, 1)
      return NONE
    }
    assert(moves.zoneState[zone] === VACATING, 'a zone turns free that nobody has left')
    moves.zoneState[zone] = FREE
  } else if (moves.zoneState[zone] !== FREE) return NONE
  const path = leaves ? wayIn(line, flags[from]!, from) : NONE
  if (path === NONE) settleFree(line, zone)
  return path
}

/** Whether the place has a carrier that is done. */
function waits(line: Line, quick: Quick, place: number): boolean {
  const { zoneCarrier, carrierPhase } = line.moves
  const carrier = zoneCarrier[place]!
  if (carrier === NONE) return false
  if (quick.restIsKnown[carrier] === 1) settleRest(line, quick, carrier)
  return carrierPhase[carrier] === DONE
}

/** The path along which the carrier that waits in the place can start now; NONE. */
function wayIn(line: Line, flag: number, place: number): number {
  const path = line.graph.onlyOut[place]!
  if (path === NONE) return pathThatStarts(line, place, false)
  if ((flag & EXIT_CLEAR) === 0 || canLeave(line, place)) return path
  waitFor(line, path)
  return NONE
}
