/** Phase 1 of an instant: "Stops that end now end, stops that begin now begin". (MODEL.md §1, §7) */
import { onGrid } from './grid.ts'
import { breakIsOn, operates } from './held.ts'
import type { World } from './world.ts'

/** Ends or begins one stop, ends first; then one repair that finds a crew; false: nothing of the kind is due. A stop of 0 s begins and ends within the phase. */
export function turnOneStop(w: World): boolean {
  noteZeroes(w)
  return endOneStop(w) || beginOneStop(w) || startOneRepair(w)
}

function endOneStop(w: World): boolean {
  const pause = w.breaks.findIndex((b) => b.state === 'on' && b.left === 0)
  if (pause >= 0) {
    w.breaks[pause]!.state = 'over'
    if (!breakIsOn(w)) w.log.push({ t: w.t, what: 'break end' })
    return true
  }
  const index = w.sources.findIndex((s) => s.inRepair && s.left === 0)
  if (index >= 0) {
    const spec = w.spec.breakdowns[index]!
    const left = w.draws.inOrder(`down/${spec.name}`, spec.timeToFailureSeconds) // "the next when the repair ends"
    w.sources[index] = { down: false, failedAt: 0, inRepair: false, left, isZero: left === 0 }
    w.log.push({ t: w.t, what: 'stop end', source: index })
    return true
  }
  const over = w.safetyStops.find(({ left }) => left === 0)
  if (over === undefined) return false
  w.safetyStops = w.safetyStops.filter((stop) => stop !== over)
  w.log.push({ t: w.t, what: 'safety stop end', station: over.station, source: safetySource(w, over.station) })
  return true
}

function beginOneStop(w: World): boolean {
  const pause = w.breaks.findIndex((b) => b.state === 'ahead' && b.left === 0)
  if (pause >= 0) {
    const left = onGrid(w.spec.breaks[pause]!.lengthSeconds)
    // One that begins in another only makes it longer; one of 0 s is none.
    if (left > 0 && !breakIsOn(w)) w.log.push({ t: w.t, what: 'break begin' })
    w.breaks[pause] = { state: left > 0 ? 'on' : 'over', left }
    return true
  }
  // "A clock that reaches its value at the very instant the operation ends does break down."
  const index = w.sources.findIndex(({ down, left, isZero }) => !down && left === 0 && !isZero)
  if (index >= 0) {
    w.sources[index] = { down: true, failedAt: w.t, inRepair: false, left: Number.NaN, isZero: false }
    w.log.push({ t: w.t, what: 'stop begin', source: index })
    return true
  }
  const inTheWay = w.moves.filter(({ safetyLeft }) => safetyLeft === 0)
  if (inTheWay.length === 0) return false
  // "at one instant the lower station index first"
  const move = inTheWay.reduce((first, other) => (other.safetyStation! < first.safetyStation! ? other : first))
  const { name, safetyStop } = w.spec.stations[move.safetyStation!]!
  move.safetyLeft = null
  w.safetyStops.push({ station: move.safetyStation!, left: w.draws.inOrder(`reset/${name}`, safetyStop!.resetSeconds) })
  w.log.push({ t: w.t, what: 'safety stop begin', station: move.safetyStation!, source: safetySource(w, move.safetyStation!) })
  return true
}

/** A clock of operating time whose value is 0 reaches it as the part operates: all clocks of the part together, before any of their stops holds it. */
function noteZeroes(w: World): void {
  w.sources.forEach((source, index) => {
    const { clock, part } = w.spec.breakdowns[index]!
    if (source.isZero && (clock === 'calendar' || operates(w, part))) source.isZero = false
  })
}

/** "the repair starts (and is drawn) when a crew is free: the earliest failure first, then the lower breakdown index, after all stops that end or begin at that instant" */
function startOneRepair(w: World): boolean {
  const crews = w.spec.repairCrews
  const atWork = w.sources.filter(({ inRepair }) => inRepair).length
  if (crews !== null && atWork >= crews) return false
  const waiting = w.sources.filter(({ down, inRepair }) => down && !inRepair)
  if (waiting.length === 0) return false
  const first = waiting.reduce((a, b) => (b.failedAt < a.failedAt ? b : a))
  const index = w.sources.indexOf(first)
  const spec = w.spec.breakdowns[index]!
  first.inRepair = true
  first.left = w.draws.inOrder(`repair/${spec.name}`, spec.repairSeconds)
  if (crews !== null && crews < w.sources.length) w.log.push({ t: w.t, what: 'repair start', source: index })
  return true
}

/** the number of a station's safety stop: past the breakdowns, by station that has one */
function safetySource(w: World, station: number): number {
  return w.spec.breakdowns.length + w.spec.stations.slice(0, station).filter(({ safetyStop }) => safetyStop !== null).length
}
