/** Stops: breakdowns of stations, zones, transfers and the line, and breaks of the calendar. (MODEL.md §7) */
import { drawInOrder } from './draw.ts'
import { holdPath, resumePath } from './move.ts'
import { operatesNow } from './operation.ts'
import { addTo, type Line, NONE } from './state.ts'
import { holdStation, resumeStation } from './station.ts'
import { BREAK_BEGIN, BREAK_END, STOP_BEGIN, STOP_END } from './trace.ts'
import { holdChange, resumeChange } from './transfer.ts'

function holdZone(line: Line, zone: number): void {
  line.collector.touch(zone)
  if (line.zoneHeld[zone]!++ > 0) return
  for (let k = line.outs.first[zone]!; k < line.outs.first[zone + 1]!; k++) holdPath(line, line.outs.items[k]!)
  for (let k = line.ins.first[zone]!; k < line.ins.first[zone + 1]!; k++) holdPath(line, line.ins.items[k]!)
  holdChange(line, zone)
}

function resumeZone(line: Line, zone: number): void {
  line.collector.touch(zone)
  if (--line.zoneHeld[zone]! > 0) return
  for (let k = line.outs.first[zone]!; k < line.outs.first[zone + 1]!; k++) resumePath(line, line.outs.items[k]!)
  for (let k = line.ins.first[zone]!; k < line.ins.first[zone + 1]!; k++) resumePath(line, line.ins.items[k]!)
  resumeChange(line, zone)
  addTo(line.moveList, zone)
}

function holdAllZones(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) holdZone(line, zone)
}

function resumeAllZones(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) resumeZone(line, zone)
}

/** Draws the first time to failure of every source and puts up the breaks; at time 0. */
export function startStops(line: Line): void {
  for (let source = 0; source < line.sources; source++) setFailure(line, source)
  if (line.breakTimes.length > 0) {
    line.queue.times[line.breakSlot] = line.breakTimes[0]!
    line.queue.schedule(line.breakSlot)
  }
}

function setFailure(line: Line, source: number): void {
  drawInOrder(line, line.sourceFailure[source]!, line.failureStream[source]!)
  const seconds = line.drawn[0]!
  if (line.sourceCalendar[source] === 1 || operatesNow(line, source)) {
    line.queue.times[source] = line.now + seconds
    line.queue.schedule(source)
  } else line.sourceLeft[source] = seconds
}

/** The timer of a source has ended: it breaks down, or its repair is over. */
export function onSource(line: Line, source: number): void {
  line.collector.onCauseChange(source)
  const { part } = line.spec.breakdowns[source]!
  if (line.sourceDown[source] === 0) {
    line.sourceDown[source] = 1
    line.collector.causes.begin(source)
    if (line.trace !== null) line.trace.add(line.now, STOP_BEGIN, source, NONE, 0)
    if (part.kind === 'section') holdAllZones(line)
    else if (part.kind === 'station') holdStation(line, part.index)
    else holdZone(line, part.index)
    drawInOrder(line, line.sourceRepair[source]!, line.repairStream[source]!)
    line.queue.times[source] = line.now + line.drawn[0]!
    line.queue.schedule(source)
  } else {
    line.collector.causes.end(source)
    if (line.trace !== null) line.trace.add(line.now, STOP_END, source, NONE, 0)
    if (part.kind === 'section') resumeAllZones(line)
    else if (part.kind === 'station') resumeStation(line, part.index)
    else resumeZone(line, part.index)
    line.sourceDown[source] = 0
    setFailure(line, source)
  }
}

/** One or more breaks begin or end now; ends come before begins. */
export function onBreak(line: Line): void {
  const { breakTimes, breakSteps, collector, spec } = line
  collector.onCauseChange(line.sources)
  while (line.breakNext < breakTimes.length && breakTimes[line.breakNext] === line.now) {
    const step = breakSteps[line.breakNext++]!
    line.breaksNow += step
    const turnsOn = step === 1 && line.breaksNow === 1
    const turnsOff = step === -1 && line.breaksNow === 0
    if (!turnsOn && !turnsOff) continue
    if (line.trace !== null) line.trace.add(line.now, turnsOn ? BREAK_BEGIN : BREAK_END, NONE, NONE, 0)
    if (turnsOn) collector.causes.begin(line.sources)
    else collector.causes.end(line.sources)
    for (let station = 0; station < line.stations; station++) {
      if (line.stationBreaks[station] === 0) collector.touch(line.stationZone[station]!)
      else if (turnsOn) holdStation(line, station)
      else resumeStation(line, station)
    }
    if (!spec.conveyorDuringBreaks) {
      if (turnsOn) holdAllZones(line)
      else resumeAllZones(line)
    }
  }
  if (line.breakNext < breakTimes.length) {
    line.queue.times[line.breakSlot] = breakTimes[line.breakNext]!
    line.queue.schedule(line.breakSlot)
  }
}
