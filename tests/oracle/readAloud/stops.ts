/** Phase 1 of an instant: "Stops that end now end, stops that begin now begin". (MODEL.md §1, §7) */
import { onGrid } from './grid.ts'
import type { World } from './world.ts'

/** Ends or begins one stop, ends first; false: none ends or begins now. A stop of 0 s begins and ends within the phase. */
export function turnOneStop(w: World): boolean {
  return endOneStop(w) || beginOneStop(w)
}

function endOneStop(w: World): boolean {
  const pause = w.breaks.findIndex((b) => b.state === 'on' && b.left === 0)
  if (pause >= 0) {
    w.breaks[pause]!.state = 'over'
    w.log.push({ t: w.t, what: 'break end', break: pause })
    return true
  }
  const index = w.sources.findIndex((s) => s.down && s.left === 0)
  if (index < 0) return false
  const spec = w.spec.breakdowns[index]!
  w.sources[index]!.down = false
  w.sources[index]!.left = w.draws.inOrder(`down/${spec.name}`, spec.timeToFailureSeconds) // "the next when the repair ends"
  w.log.push({ t: w.t, what: 'stop end', source: index })
  return true
}

function beginOneStop(w: World): boolean {
  const pause = w.breaks.findIndex((b) => b.state === 'ahead' && b.left === 0)
  if (pause >= 0) {
    w.breaks[pause]!.state = 'on'
    w.breaks[pause]!.left = onGrid(w.spec.breaks[pause]!.lengthSeconds)
    w.log.push({ t: w.t, what: 'break begin', break: pause })
    return true
  }
  // "A clock that reaches its value at the very instant the operation ends does break down."
  const index = w.sources.findIndex((s) => !s.down && s.left === 0)
  if (index < 0) return false
  const spec = w.spec.breakdowns[index]!
  w.sources[index]!.down = true
  w.sources[index]!.left = w.draws.inOrder(`repair/${spec.name}`, spec.repairSeconds)
  w.log.push({ t: w.t, what: 'stop begin', source: index })
  return true
}
