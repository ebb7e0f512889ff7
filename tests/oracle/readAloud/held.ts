/** What a stop holds, and what operates. (MODEL.md §7) */
import type { BreakdownPart } from '@loopwright/line'
import type { Move, World } from './world.ts'

export function breakIsOn(w: World): boolean {
  return w.breaks.some((pause) => pause.state === 'on')
}

function holdsZone(part: BreakdownPart, zone: number): boolean {
  // "Zone or transfer: moves into and out of it and its position change … Section: all its zones"
  return part.kind === 'section' || ((part.kind === 'zone' || part.kind === 'transfer') && part.index === zone)
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
  return w.spec.breakdowns.map((_, k) => k).filter((k) => w.sources[k]!.down && holdsZone(w.spec.breakdowns[k]!.part, zone))
}

export function sourcesOnStation(w: World, station: number): number[] {
  return w.spec.breakdowns.map((_, k) => k).filter((k) => w.sources[k]!.down && holdsStation(w.spec.breakdowns[k]!.part, station))
}

export function zoneIsHeld(w: World, zone: number): boolean {
  return sourcesOnZone(w, zone).length > 0 || breakHoldsZones(w)
}

export function stationIsHeld(w: World, station: number): boolean {
  return sourcesOnStation(w, station).length > 0 || breakHoldsStation(w, station)
}

/** "while i, j or the path is held, … both its times stand still" */
export function moveIsHeld(w: World, move: Move): boolean {
  return zoneIsHeld(w, move.from) || zoneIsHeld(w, move.to)
}

export function stationIn(w: World, zone: number): number | null {
  const station = w.spec.stations.findIndex((s) => s.zone === zone)
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
      return w.spec.zones.some((_, zone) => zoneOperates(w, zone))
  }
}
