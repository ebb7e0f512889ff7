/**
 * Operating time: how long parts operate, and the clocks of failures that run with them. (MODEL.md §7)
 * A zone operates while a move into it (start to arrival) or out of it (start to clear) or a change of its transfer is in progress and not held;
 * a section while any of its zones does; a transfer while it changes; a station while it works.
 * Each of these is known to the end when it begins. So by part stands the instant up to which it operates, as far as is known, and by clock what is left of it then: it
 * has a timer only where it runs out before. What a stop holds, and lets go on, is worked out anew.
 */
import type { Line } from '../state/line.ts'
import { addTo, clearList, NONE, type PartList } from '../state/lists.ts'
import { CLEAR_NOW } from '../state/moves.ts'
import { BACK, TO_WAY_IN, TO_WAY_OUT } from '../state/transfers.ts'

/** The part operates up to `knownEnd`, as far as is known: later than before, or no longer, where a stop begins now. A clock that reaches its value at that very instant still breaks down. */
function operateTo(line: Line, clocks: PartList, until: Float64Array, part: number): void {
  const { now, queue, stops } = line
  const { sourceDown, sourceLeft, sourceTimed } = stops
  const end = stops.knownEnd[0]!
  const was = until[part]!
  until[part] = end
  const more = end - Math.max(was, now)
  for (let k = clocks.first[part]!; k < clocks.first[part + 1]!; k++) {
    const source = clocks.items[k]!
    if (sourceDown[source] === 1) continue
    const left = sourceLeft[source]! - more
    sourceLeft[source] = left
    if (left <= 0 && sourceTimed[source] === 0) {
      sourceTimed[source] = 1
      queue.times[source] = end + left
      queue.schedule(source)
    } else if (left > 0 && sourceTimed[source] === 1) {
      sourceTimed[source] = 0
      queue.cancel(source)
    }
  }
}

/** The part operates until the timer of the slot ends, if that is not known yet. */
function operate(line: Line, clocks: PartList, until: Float64Array, part: number, slot: number): void {
  const end = line.queue.times[slot]!
  const was = until[part]!
  if (was >= end && was > line.now) return
  if (clocks.first[part] === clocks.first[part + 1]) {
    until[part] = end
    return
  }
  line.stops.knownEnd[0] = end
  operateTo(line, clocks, until, part)
}

/** The part is held, or was not operating. */
function stopOperating(line: Line, clocks: PartList, until: Float64Array, part: number): void {
  if (until[part]! <= line.now) return
  line.stops.knownEnd[0] = line.now
  operateTo(line, clocks, until, part)
}

/** A station begins, or goes on, with the work whose timer runs. */
export function operateStation(line: Line, station: number): void {
  const { stationClocks, stationUntil } = line.stops
  operate(line, stationClocks, stationUntil, station, line.slots.workSlot + station)
}

/** Its work is held. */
export function stopStation(line: Line, station: number): void {
  const { stationClocks, stationUntil } = line.stops
  stopOperating(line, stationClocks, stationUntil, station)
}

/** A zone operates until the timer of the slot ends, and its section with it. */
export function operateZone(line: Line, zone: number, slot: number): void {
  const { stops, sections } = line
  operate(line, stops.zoneClocks, stops.zoneUntil, zone, slot)
  const section = sections.zoneSection[zone]!
  if (section !== NONE) operate(line, sections.sectionClocks, sections.sectionUntil, section, slot)
}

/** The transfer in the zone begins to change its position. */
export function operateChange(line: Line, zone: number): void {
  const { transferClocks, transferUntil } = line.stops
  operate(line, transferClocks, transferUntil, zone, line.slots.changeSlot + zone)
  if (line.followsZones) operateZone(line, zone, line.slots.changeSlot + zone)
}

/** A stop begins or ends to hold the zone's change. */
export function followChange(line: Line, zone: number): void {
  const { transferClocks, transferUntil } = line.stops
  if (changes(line, zone) && line.stops.zoneHeld[zone] === 0)
    operate(line, transferClocks, transferUntil, zone, line.slots.changeSlot + zone)
  else stopOperating(line, transferClocks, transferUntil, zone)
  if (line.followsZones) addTo(line.stops.zonesHeld, zone)
}

/** A stop begins or ends to hold the path. */
export function followPath({ followsZones, graph, stops, store }: Line, path: number): void {
  if (!followsZones) return
  if (graph.pathFrom[path] !== store) addTo(stops.zonesHeld, graph.pathFrom[path]!)
  if (graph.pathTo[path] !== store) addTo(stops.zonesHeld, graph.pathTo[path]!)
}

function changes({ transfers }: Line, zone: number): boolean {
  const change = transfers.zoneChange[zone]
  return change === TO_WAY_OUT || change === BACK || change === TO_WAY_IN
}

/** Writes into `knownEnd` until when the zone operates by what is under way in it and not held; now, where that is nothing. */
export function findZoneEnd(line: Line, zone: number): void {
  const { graph, moves, slots, stops, queue } = line
  const { knownEnd } = stops
  const { first, items } = graph.ins
  knownEnd[0] = line.now
  for (let k = first[zone]!; k < first[zone + 1]!; k++) {
    const path = items[k]!
    if (moves.pathCarrier[path] !== NONE && stops.pathHeld[path] === 0) takeLater(knownEnd, queue.times, slots.arrivalSlot + path)
  }
  const leaving = moves.leavingPath[zone]!
  if (leaving !== NONE && stops.pathHeld[leaving] === 0 && moves.zoneClearing[zone] !== CLEAR_NOW)
    takeLater(knownEnd, queue.times, slots.clearSlot + zone)
  if (stops.zoneHeld[zone] === 0 && changes(line, zone)) takeLater(knownEnd, queue.times, slots.changeSlot + zone)
}

function takeLater(end: Float64Array, times: Float64Array, slot: number): void {
  if (times[slot]! > end[0]!) end[0] = times[slot]!
}

/** Writes into `knownEnd` until when the section operates: as long as any of its zones. */
export function findSectionEnd({ now, sections, stops }: Line, section: number): void {
  const { first, items } = sections.sectionZones
  stops.knownEnd[0] = now
  for (let k = first[section]!; k < first[section + 1]!; k++) takeLater(stops.knownEnd, stops.zoneUntil, items[k]!)
}

/** A stop has begun or ended: how long the zones that it touches operate, and their sections, is known anew. */
export function followStop(line: Line): void {
  const { stops, sections } = line
  const { zonesHeld } = stops
  const { sectionsHeld } = sections
  for (let place = 0; place < zonesHeld.length; place++) {
    const zone = zonesHeld.items[place]!
    findZoneEnd(line, zone)
    if (stops.knownEnd[0]! !== line.now || stops.zoneUntil[zone]! > line.now) operateTo(line, stops.zoneClocks, stops.zoneUntil, zone)
    const section = sections.zoneSection[zone]!
    if (section !== NONE) addTo(sectionsHeld, section)
  }
  for (let place = 0; place < sectionsHeld.length; place++) {
    const section = sectionsHeld.items[place]!
    findSectionEnd(line, section)
    if (stops.knownEnd[0]! !== line.now || sections.sectionUntil[section]! > line.now)
      operateTo(line, sections.sectionClocks, sections.sectionUntil, section)
  }
  clearList(zonesHeld)
  clearList(sectionsHeld)
}

/** Starts the operating clock of a source anew, with `drawn` seconds, while its part may operate. */
export function startClock(line: Line, source: number): void {
  const { now, stops } = line
  const { part } = line.spec.breakdowns[source]!
  const until =
    part.kind === 'section'
      ? line.sections.sectionUntil
      : part.kind === 'zone'
        ? stops.zoneUntil
        : part.kind === 'transfer'
          ? stops.transferUntil
          : stops.stationUntil
  const seconds = line.draws.drawn[0]!
  const known = until[part.index]! - now
  stops.sourceTimed[source] = 0
  stops.sourceLeft[source] = known > 0 ? seconds - known : seconds
  if (known <= 0 || seconds > known) return
  stops.sourceTimed[source] = 1
  line.queue.times[source] = now + seconds
  line.queue.schedule(source)
}
