/** What a stop holds, and what operates. (MODEL.md §7) */
import { type BreakdownPart, STORE } from '@loopwright/line'
import type { Move, World } from './world.ts'

export function breakIsOn(w: World): boolean {
  return w.breaks.some((pause) => pause.state === 'on')
}

function holdsZone(w: World, part: BreakdownPart, zone: number): boolean {
  // "Zone or transfer: moves into and out of it and its position change … Section: all its zones"
  if (part.kind === 'section') return w.spec.sections[part.index]!.zones.includes(zone)
  return (part.kind === 'zone' || part.kind === 'transfer') && part.index === zone
}

function holdsStation(part: BreakdownPart, station: number): boolean {
  return part.kind === 'station' && part.index === station
}

/** "operators stop …; work at automatic stations stops unless the station says worksInBreaks" */
export function breakHoldsStation(w: World, station: number): boolean {
  const { operatorsNeeded, worksInBreaks } = w.spec.stations[station]!
  return breakIsOn(w) && !(operatorsNeeded === 0 && worksInBreaks)
}

export function breakHoldsZones(w: World): boolean {
  return breakIsOn(w) && !w.spec.conveyorDuringBreaks
}

/** indices of the sources that are down and hold the zone */
export function sourcesOnZone(w: World, zone: number): number[] {
  return w.spec.breakdowns.map((_, k) => k).filter((k) => w.sources[k]!.down && holdsZone(w, w.spec.breakdowns[k]!.part, zone))
}

export function sourcesOnStation(w: World, station: number): number[] {
  return w.spec.breakdowns.map((_, k) => k).filter((k) => w.sources[k]!.down && holdsStation(w.spec.breakdowns[k]!.part, station))
}

/** the zones of the section in which the station is: those that its safety stop stops */
function zonesOfSafetyStop(w: World, station: number): readonly number[] {
  const { zone } = w.spec.stations[station]!
  return w.spec.sections.find((section) => section.zones.includes(zone))?.zones ?? []
}

/** stations whose safety stop is on and holds the zone */
export function safetyStopsOnZone(w: World, zone: number): number[] {
  if (w.safetyStops.length === 0) return []
  const stations = w.safetyStops.map(({ station }) => station).filter((station) => zonesOfSafetyStop(w, station).includes(zone))
  return [...new Set(stations)]
}

/** The store is never held. */
export function zoneIsHeld(w: World, place: number): boolean {
  if (place === STORE) return false
  return sourcesOnZone(w, place).length > 0 || safetyStopsOnZone(w, place).length > 0 || breakHoldsZones(w)
}

export function stationIsHeld(w: World, station: number): boolean {
  return sourcesOnStation(w, station).length > 0 || breakHoldsStation(w, station)
}

/** a stop holds i or j */
export function endsAreHeld(w: World, path: number): boolean {
  const { from, to } = w.spec.paths[path]!
  return zoneIsHeld(w, from) || zoneIsHeld(w, to)
}

/** a stop holds i, j or the path; "operators stop, walking, pushing and pulling too" */
export function pathIsHeld(w: World, path: number): boolean {
  return endsAreHeld(w, path) || (w.spec.paths[path]!.manual !== null && breakIsOn(w))
}

/** "while i, j or the path is held, … both its times stand still" */
export function moveIsHeld(w: World, move: Move): boolean {
  return pathIsHeld(w, move.path)
}

export function stationIn(w: World, place: number): number | null {
  const station = w.spec.stations.findIndex((s) => s.zone === place)
  return station < 0 ? null : station
}

/** work or release of the carrier at rest in this station is held */
function workIsRunning(w: World, station: number): boolean {
  const zone = w.zones[w.spec.stations[station]!.zone]!
  return zone.state === 'occupied' && w.carriers[zone.carrier!]!.work !== null && !stationIsHeld(w, station)
}

function changeIsRunning(w: World, zone: number): boolean {
  return w.zones[zone]!.change !== null && !zoneIsHeld(w, zone)
}

/** "while a move into it (its start to arrival) or out of it (start to clear, position changes included) is in progress and not held" */
function zoneOperates(w: World, zone: number): boolean {
  for (const move of w.moves) {
    if (moveIsHeld(w, move)) continue
    if (move.to === zone && move.stage !== 'arrived') return true
    if (move.from === zone && move.clearLeft !== null) return true
  }
  return changeIsRunning(w, zone)
}

/** whether the part of an operating clock operates now. Station: release is not work. */
export function operates(w: World, part: BreakdownPart): boolean {
  switch (part.kind) {
    case 'zone':
      return zoneOperates(w, part.index)
    case 'transfer':
      return changeIsRunning(w, part.index)
    case 'station':
      return workIsRunning(w, part.index)
    case 'section':
      return w.spec.sections[part.index]!.zones.some((zone) => zoneOperates(w, zone))
  }
}
