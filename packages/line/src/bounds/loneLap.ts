/** The lap of one carrier alone: its moves as it would make them, its stops, work, releases and transfer changes. (MODEL.md §3, §4, §12) */
import { REST, SPEED } from '../moves/motion.ts'
import type { LineSpec } from '../spec.ts'
import type { DutyLaps } from './dutyLaps.ts'
import type { PathTimes } from './pathTimes.ts'
import { changeSeconds } from './transferChange.ts'

/**
 * Seconds per lap, on average over the laps given. A carrier with nothing to do in a zone passes it at speed.
 *
 * @param times  mean times by path
 */
export function loneLap(spec: LineSpec, times: readonly PathTimes[], laps: DutyLaps): number {
  const visits = laps.visits
  const change = spec.zones.map((_, zone) => changeSeconds(spec, zone))
  const stops = visits.map((visit) => visit.duty || change[visit.zone] !== null)
  let seconds = 0
  visits.forEach((visit, index) => {
    const last = (index + visits.length - 1) % visits.length
    const start = stops[index]! || times[visits[last]!.zone]!.given ? REST : SPEED
    const end = stops[(index + 1) % visits.length]! ? REST : SPEED
    seconds += visit.workSeconds + visit.releaseSeconds + (change[visit.zone]?.out ?? 0)
    seconds += times[visit.zone]!.move[2 * start + end]!
  })
  return seconds / laps.laps
}
