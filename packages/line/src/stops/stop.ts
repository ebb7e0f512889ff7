/** Stops: breakdowns of stations, zones, transfers and sections, safety stops, and breaks of the calendar. (MODEL.md §7) */

import { freeCrew, startRepair, waitForCrew } from './crew.ts'
import { drawInOrder } from '../work/draw.ts'
import { holdPath, resumePath } from '../moves/heldPath.ts'
import { wake } from '../moves/moveHeap.ts'
import { followStop, startClock } from './operation.ts'
import { holdWalks, resumeWalks } from '../operators/operators.ts'
import { startReset } from './safety.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { holdStation, resumeStation } from '../work/station.ts'
import { BREAK_BEGIN, BREAK_END, STOP_BEGIN, STOP_END } from '../telling/trace.ts'
import { holdChange, resumeChange } from '../moves/transfer.ts'

function holdZone(line: Line, zone: number): void {
  const { graph } = line
  line.collector.touch(zone)
  if (line.stops.zoneHeld[zone]!++ > 0) return
  for (let k = graph.outs.first[zone]!; k < graph.outs.first[zone + 1]!; k++) holdPath(line, graph.outs.items[k]!)
  for (let k = graph.ins.first[zone]!; k < graph.ins.first[zone + 1]!; k++) holdPath(line, graph.ins.items[k]!)
  holdChange(line, zone)
}

function resumeZone(line: Line, zone: number): void {
  const { graph } = line
  line.collector.touch(zone)
  if (--line.stops.zoneHeld[zone]! > 0) return
  for (let k = graph.outs.first[zone]!; k < graph.outs.first[zone + 1]!; k++) resumePath(line, graph.outs.items[k]!)
  for (let k = graph.ins.first[zone]!; k < graph.ins.first[zone + 1]!; k++) resumePath(line, graph.ins.items[k]!)
  resumeChange(line, zone)
  wake(line, zone)
}

function holdAllZones(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) holdZone(line, zone)
}

function resumeAllZones(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) resumeZone(line, zone)
}

function holdSection(line: Line, section: number): void {
  const { first, items } = line.sections.sectionZones
  for (let k = first[section]!; k < first[section + 1]!; k++) holdZone(line, items[k]!)
}

function resumeSection(line: Line, section: number): void {
  const { first, items } = line.sections.sectionZones
  for (let k = first[section]!; k < first[section + 1]!; k++) resumeZone(line, items[k]!)
}

/** Somebody is in the way of the carrier's move: the section of the station that watches it stops until it is reset. */
export function onSafetyStop(line: Line, carrier: number): void {
  const { safety } = line
  const station = safety.watchStation[carrier]!
  const k = safety.safetyOf[station]!
  const cause = line.sources + k
  startReset(line, carrier)
  line.collector.onCauseChange(cause)
  if (line.trace !== null) line.trace.add(line.now, STOP_BEGIN, cause, carrier, 0)
  safety.safetyActive[k]!++
  line.collector.causes.begin(cause, safety.safetyActive[k] === 1)
  holdSection(line, line.sections.zoneSection[line.work.stationZone[station]!]!)
  followStop(line)
}

export function onSafetyReset(line: Line, place: number): void {
  const { safety } = line
  const station = safety.resetStation[place]!
  const k = safety.safetyOf[station]!
  const cause = line.sources + k
  line.collector.onCauseChange(cause)
  if (line.trace !== null) line.trace.add(line.now, STOP_END, cause, NONE, 0)
  safety.safetyActive[k]!--
  if (safety.safetyActive[k] === 0) line.collector.causes.end(cause)
  resumeSection(line, line.sections.zoneSection[line.work.stationZone[station]!]!)
  followStop(line)
}

/** Draws the first time to failure of every source and puts up the breaks; at time 0. */
export function startStops(line: Line): void {
  const { stops, slots } = line
  for (let source = 0; source < line.sources; source++) setFailure(line, source)
  if (stops.breakTimes.length > 0) {
    line.queue.times[slots.breakSlot] = stops.breakTimes[0]!
    line.queue.schedule(slots.breakSlot)
  }
}

function setFailure(line: Line, source: number): void {
  const { failures, stops } = line
  drawInOrder(line, failures.sourceFailure[source]!, failures.failureStream[source]!)
  if (stops.sourceCalendar[source] === 1) {
    line.queue.times[source] = line.now + line.draws.drawn[0]!
    line.queue.schedule(source)
  } else startClock(line, source)
}

/** The timer of a source has ended: it breaks down, or its repair is over. */
export function onSource(line: Line, source: number): void {
  const { stops } = line
  line.collector.onCauseChange(source)
  const { part } = line.spec.breakdowns[source]!
  if (stops.sourceDown[source] === 0) {
    stops.sourceDown[source] = 1
    line.collector.causes.begin(source)
    if (line.trace !== null) line.trace.add(line.now, STOP_BEGIN, source, NONE, 0)
    if (part.kind === 'section') holdSection(line, part.index)
    else if (part.kind === 'station') holdStation(line, part.index)
    else holdZone(line, part.index)
    followStop(line)
    if (line.hasCrews) waitForCrew(line, source)
    else startRepair(line, source)
  } else {
    line.collector.causes.end(source)
    if (line.trace !== null) line.trace.add(line.now, STOP_END, source, NONE, 0)
    if (part.kind === 'section') resumeSection(line, part.index)
    else if (part.kind === 'station') resumeStation(line, part.index)
    else resumeZone(line, part.index)
    followStop(line)
    stops.sourceDown[source] = 0
    if (line.hasCrews) freeCrew(line)
    setFailure(line, source)
  }
}

/** Walks, pushes and pulls stand still in a break, and go on after it. */
function breakHandling(line: Line, turnsOn: boolean): void {
  if (turnsOn) holdWalks(line)
  else resumeWalks(line)
  for (let path = 0; path < line.paths; path++) {
    if (line.graph.manualStation[path] === NONE) continue
    if (turnsOn) holdPath(line, path)
    else resumePath(line, path)
  }
}

/** One or more breaks begin or end now; ends come before begins. */
export function onBreak(line: Line): void {
  const { collector, spec, stops, slots } = line
  const { breakTimes, breakSteps } = stops
  const cause = collector.causes.length - 1
  collector.onCauseChange(cause)
  while (stops.breakNext < breakTimes.length && breakTimes[stops.breakNext] === line.now) {
    const step = breakSteps[stops.breakNext++]!
    stops.breaksNow += step
    const turnsOn = step === 1 && stops.breaksNow === 1
    const turnsOff = step === -1 && stops.breaksNow === 0
    if (!turnsOn && !turnsOff) continue
    if (line.trace !== null) line.trace.add(line.now, turnsOn ? BREAK_BEGIN : BREAK_END, NONE, NONE, 0)
    if (turnsOn) collector.causes.begin(cause)
    else collector.causes.end(cause)
    if (line.operators > 0) breakHandling(line, turnsOn)
    for (let station = 0; station < line.stations; station++) {
      if (stops.stationBreaks[station] === 0) collector.touch(line.work.stationZone[station]!)
      else if (turnsOn) holdStation(line, station)
      else resumeStation(line, station)
    }
    if (!spec.conveyorDuringBreaks) {
      if (turnsOn) holdAllZones(line)
      else resumeAllZones(line)
    }
  }
  followStop(line)
  if (stops.breakNext < breakTimes.length) {
    line.queue.times[slots.breakSlot] = breakTimes[stops.breakNext]!
    line.queue.schedule(slots.breakSlot)
  }
}
