/** Safety stops: somebody in the way of a move stops the section of a station until it is reset. (MODEL.md §7) */
import { toGridAt } from '@loopwright/kernel'
import { drawInOrder } from '../work/draw.ts'
import type { Names, Samplers } from '../state/registry.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import type { Safety } from '../state/stops.ts'
import { holdTimer, resumeTimer, startTimer } from '../state/timer.ts'

/**
 * By path the station that draws for its moves: that at its end, else that at its start.
 *
 * @throws RangeError  if such a station stands in a zone of no section
 */
export function buildSafety(spec: LineSpec, zoneSection: Int32Array, carriers: number, names: Names, samplers: Samplers): Safety {
  const safetyStations: number[] = []
  const safetyOf = new Int32Array(spec.stations.length).fill(NONE)
  const byZone = new Int32Array(spec.zones.length).fill(NONE)
  const safetyProbability: number[] = []
  const safetyStream: number[] = []
  const resetSampler: number[] = []
  const resetStream: number[] = []
  spec.stations.forEach(({ name, zone, safetyStop }, station) => {
    if (safetyStop === null) return
    if (zoneSection[zone] === NONE) throw new RangeError(`station ${name} has a safety stop, but its zone is in no section`)
    safetyOf[station] = safetyStations.push(station) - 1
    byZone[zone] = station
    safetyProbability.push(safetyStop.probability)
    safetyStream.push(names.of(`safety/${name}`))
    resetSampler.push(samplers.of(safetyStop.resetSeconds))
    resetStream.push(names.of(`reset/${name}`))
  })
  const at = (end: number): number => (end < 0 ? NONE : byZone[end]!)
  return {
    pathSafety: Int32Array.from(spec.paths, ({ from, to }) => (at(to) === NONE ? at(from) : at(to))),
    safetyStations: Int32Array.from(safetyStations),
    safetyOf,
    safetyProbability: Float64Array.from(safetyProbability),
    safetyStream: Int32Array.from(safetyStream),
    resetSampler: Int32Array.from(resetSampler),
    resetStream: Int32Array.from(resetStream),
    watchStation: new Int32Array(carriers),
    resetStation: new Int32Array(safetyStations.length > 0 ? 3 * carriers : 0),
    safetyActive: new Int32Array(safetyStations.length),
  }
}

/** A move that a station watches starts: two uniforms, whether somebody is in the way and when. `line.drawn` holds the seconds of the move. */
export function watchMove(line: Line, path: number, carrier: number): void {
  const { safety, slots } = line
  const station = safety.pathSafety[path]!
  if (station === NONE) return
  const k = safety.safetyOf[station]!
  const { streams, drawn } = line.draws
  streams.next(safety.safetyStream[k]!)
  const isInTheWay = streams.u[0]! < safety.safetyProbability[k]!
  streams.next(safety.safetyStream[k]!)
  if (!isInTheWay) return
  drawn[0] = streams.u[0]! * drawn[0]!
  toGridAt(drawn, 0)
  safety.watchStation[carrier] = station
  line.queue.times[slots.safetySlot + carrier] = line.now + drawn[0]!
  startTimer(line, slots.safetySlot + carrier)
}

/** The move that was watched stands still, and goes on. */
export function holdWatch(line: Line, carrier: number): void {
  if (line.hasSafety && carrier !== NONE) holdTimer(line, line.slots.safetySlot + carrier)
}

export function resumeWatch(line: Line, carrier: number): void {
  if (line.hasSafety && carrier !== NONE) resumeTimer(line, line.slots.safetySlot + carrier)
}

/** Draws the reset of a stop that begins now, into a slot of its own; returns the slot, counted from the first of the resets. */
export function startReset(line: Line, carrier: number): number {
  const { safety, slots } = line
  const station = safety.watchStation[carrier]!
  const k = safety.safetyOf[station]!
  let place = carrier
  while (line.queue.isPending(slots.resetSlot + place)) place += line.carriers
  safety.resetStation[place] = station
  drawInOrder(line, safety.resetSampler[k]!, safety.resetStream[k]!)
  line.queue.times[slots.resetSlot + place] = line.now + line.draws.drawn[0]!
  startTimer(line, slots.resetSlot + place)
  return place
}
