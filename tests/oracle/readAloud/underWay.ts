/** The things under way, with the time they have left. */
import { breakIsOn, moveIsHeld, operates, stationIn, stationIsHeld, zoneIsHeld } from './held.ts'
import type { World } from './world.ts'

export interface UnderWay {
  readonly left: number
  pass(seconds: number): void
}

/** Everything whose time runs now: held things stand still, clocks of operating time run only in operation. (MODEL.md §7) */
export function thingsUnderWay(w: World): UnderWay[] {
  const things: UnderWay[] = []
  for (const move of w.moves) {
    if (moveIsHeld(w, move)) continue
    if (move.stage !== 'arrived') things.push({ left: move.left, pass: (s) => (move.left -= s) })
    if (move.clearLeft !== null) things.push({ left: move.clearLeft, pass: (s) => (move.clearLeft! -= s) })
    if (move.safetyLeft !== null) things.push({ left: move.safetyLeft, pass: (s) => (move.safetyLeft! -= s) })
  }
  for (const carrier of w.carriers) {
    const station = stationIn(w, carrier.place)
    if (station === null || stationIsHeld(w, station)) continue
    const { work, release } = carrier
    if (work !== null) things.push({ left: work.left, pass: (s) => (work.left -= s) })
    if (typeof release !== 'string') things.push({ left: release.left, pass: (s) => (release.left -= s) })
  }
  w.zones.forEach((zone, index) => {
    const { change } = zone
    if (change !== null && !zoneIsHeld(w, index)) things.push({ left: change.left, pass: (s) => (change.left -= s) })
  })
  w.sources.forEach((source, index) => {
    const { clock, part } = w.spec.breakdowns[index]!
    if (source.down ? source.inRepair : clock === 'calendar' || operates(w, part))
      things.push({ left: source.left, pass: (s) => (source.left -= s) })
  })
  for (const stop of w.safetyStops) things.push({ left: stop.left, pass: (s) => (stop.left -= s) })
  for (const operator of w.operators) {
    const { walkLeft } = operator
    if (walkLeft !== null && !breakIsOn(w)) things.push({ left: walkLeft, pass: (s) => (operator.walkLeft! -= s) })
  }
  for (const clock of w.supplies)
    if (clock !== null && clock.nextLeft !== null) things.push({ left: clock.nextLeft, pass: (s) => (clock.nextLeft! -= s) })
  for (const receiver of w.receivers)
    if (receiver !== null && receiver.left !== null) things.push({ left: receiver.left, pass: (s) => (receiver.left! -= s) })
  for (const pause of w.breaks) if (pause.state !== 'over') things.push({ left: pause.left, pass: (s) => (pause.left -= s) })
  return things
}

/** the least time left; Infinity where nothing is under way */
export function leastLeft(things: readonly UnderWay[]): number {
  return Math.min(Infinity, ...things.map((thing) => thing.left))
}

/** Lets time pass, at most to the next end. */
export function letTimePass(w: World, things: readonly UnderWay[], seconds: number): void {
  for (const thing of things) thing.pass(seconds)
  w.t += seconds
}
