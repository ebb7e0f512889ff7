/**
 * Operating time: which parts operate now, and the clocks of failures that run with them. (MODEL.md §7)
 * A zone operates while a move into it (start to arrival) or out of it (start to clear) or a change of its transfer is in progress and not held;
 * a section while any of its zones does; a transfer while it changes; a station while it works.
 */
import type { Line } from '../state/line.ts'
import { NONE, type PartList } from '../state/lists.ts'
import { WORKING } from '../state/moves.ts'

/**
 * Lets the operating clock of a source run. Where it is known when the operation ends, and that the clock will not have run out by then, it needs no timer.
 *
 * @param end  slot of the timer at which the operation ends; NONE: not known
 */
function runClock(line: Line, source: number, end: number): void {
  const { queue, now } = line
  const { sourceLeft, sourceRuns } = line.stops
  if (line.stops.sourceDown[source] === 1 || sourceRuns[source] === 1 || queue.isPending(source)) return
  const at = now + sourceLeft[source]!
  if (end !== NONE && at > queue.times[end]!) {
    sourceRuns[source] = 1
    sourceLeft[source] = at
    return
  }
  queue.times[source] = at
  queue.schedule(source)
}

/** Stops it; a clock that reaches its value at this very instant still breaks down. */
function pauseClock(line: Line, source: number): void {
  const { queue, now } = line
  const { sourceLeft, sourceRuns } = line.stops
  if (sourceRuns[source] === 1) {
    sourceRuns[source] = 0
    sourceLeft[source]! -= now
    return
  }
  if (line.stops.sourceDown[source] === 1 || !queue.isPending(source)) return
  const left = queue.times[source]! - now
  if (left === 0) return
  queue.cancel(source)
  sourceLeft[source] = left
}

function runClocks(line: Line, list: PartList, part: number, end: number): void {
  for (let k = list.first[part]!; k < list.first[part + 1]!; k++) runClock(line, list.items[k]!, end)
}

function pauseClocks(line: Line, list: PartList, part: number): void {
  for (let k = list.first[part]!; k < list.first[part + 1]!; k++) pauseClock(line, list.items[k]!)
}

/** Starts the clocks of a station that begins or goes on working, or stops them. */
export function operateStation(line: Line, station: number, on: boolean): void {
  const { stops } = line
  if (on) runClocks(line, stops.stationClocks, station, line.slots.workSlot + station)
  else pauseClocks(line, stops.stationClocks, station)
}

function operateZone(line: Line, zone: number, on: boolean): void {
  const { stops, sections } = line
  if (on) {
    if (stops.zoneOperates[zone]!++ > 0) return
    runClocks(line, stops.zoneClocks, zone, NONE)
    const section = sections.zoneSection[zone]!
    if (section !== NONE && sections.sectionOperates[section]!++ === 0) runClocks(line, sections.sectionClocks, section, NONE)
  } else {
    if (--stops.zoneOperates[zone]! > 0) return
    pauseClocks(line, stops.zoneClocks, zone)
    const section = sections.zoneSection[zone]!
    if (section !== NONE && --sections.sectionOperates[section]! === 0) pauseClocks(line, sections.sectionClocks, section)
  }
}

/** The zone that a move leads into operates, or no longer. */
export function operateIn(line: Line, path: number, on: 0 | 1): void {
  const { stops, graph } = line
  if (!line.followsZones || stops.operatesIn[path] === on || graph.pathTo[path] === line.store) return
  stops.operatesIn[path] = on
  operateZone(line, graph.pathTo[path]!, on === 1)
}

/** The zone that a move leads out of operates, or no longer. */
export function operateOut(line: Line, path: number, on: 0 | 1): void {
  const { stops } = line
  if (!line.followsZones || stops.operatesOut[path] === on) return
  stops.operatesOut[path] = on
  operateZone(line, line.graph.pathFrom[path]!, on === 1)
}

/** The transfer in the zone changes its position, or no longer. */
export function operateChange(line: Line, zone: number, on: 0 | 1): void {
  const { stops } = line
  if (stops.operatesChange[zone] === on) return
  stops.operatesChange[zone] = on
  if (on === 1) runClocks(line, stops.transferClocks, zone, line.slots.changeSlot + zone)
  else pauseClocks(line, stops.transferClocks, zone)
  if (line.followsZones) operateZone(line, zone, on === 1)
}

/** Whether the part of an operating source operates now; asked when its clock is set anew. */
export function operatesNow(line: Line, source: number): boolean {
  const { stops, moves } = line
  const { part } = line.spec.breakdowns[source]!
  switch (part.kind) {
    case 'section':
      return line.sections.sectionOperates[part.index]! > 0
    case 'zone':
      return stops.zoneOperates[part.index]! > 0
    case 'transfer':
      return stops.operatesChange[part.index] === 1
    case 'station': {
      const carrier = moves.zoneCarrier[line.work.stationZone[part.index]!]!
      return carrier !== NONE && moves.carrierPhase[carrier] === WORKING && stops.stationHeld[part.index] === 0
    }
  }
}
