/** Several timers at one quick instant (quick.ts). (MODEL.md §1) */
import { stopsAtLook } from '../moves/move.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLEAR_NOW, FREE } from '../state/moves.ts'
import { MEETS, QUICK, type Quick, TRANSFER } from './quickZones.ts'

/** Whether the slots that fall due together are moves, and clears, that no stay, stop, transfer or meeting has a say in; if so the clears are made: they go before all that starts. */
export function areQuick(line: Line, { flags, before }: Quick, count: number): boolean {
  const { moves } = line
  const { due, arrivalSlot, clearSlot, workSlot } = line.slots
  const { zoneHeld } = line.stops
  const { zoneNext, pathTo } = line.graph
  if (line.followsZones || line.hasSafety) return false
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < arrivalSlot || slot >= workSlot) return false
    const from = slot < clearSlot ? pathTo[slot - arrivalSlot]! : before[slot - clearSlot]!
    if (from === NONE || (flags[from]! & (QUICK + TRANSFER + MEETS)) !== QUICK) return false
    const to = zoneNext[from]!
    if (zoneHeld[from]! + zoneHeld[to]! > 0) return false
    if (slot >= clearSlot) {
      if ((flags[to]! & TRANSFER) > 0) return false
      continue
    }
    const path = slot - arrivalSlot
    if (line.graph.manualStation[path] !== NONE) return false
    if (moves.pathLooks[path] === 0 ? line.work.zoneStation[from] !== NONE : line.stops.pathHeld[path] === 1 || stopsAtLook(line, path))
      return false
  }
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < clearSlot) continue
    moves.zoneClearing[slot - clearSlot] = CLEAR_NOW
    moves.zoneState[slot - clearSlot] = FREE
    line.activity--
  }
  return true
}
