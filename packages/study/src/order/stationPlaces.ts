/** Orders and positions of stations on a loop: which may move, where to, and what must come before what. */
import type { LineSpec } from '@loopwright/line'
import { type Places, placesOf } from './places.ts'

/** Which stations may move, and where to, by index. */
export interface PlaceRules {
  /** indices of the stations that may move, at least one */
  readonly move: readonly number[]
  /** indices of the zones that they may take; default: every zone without a transfer and without a station that stays */
  readonly zones?: readonly number[]
  /** [before, after], indices of stations */
  readonly before?: readonly (readonly [number, number])[]
}

/** What a placement breaks, as a sentence; null where it keeps all rules. */
export function whyNotPlaces(line: LineSpec, rules: PlaceRules, places: Places): string | null {
  const name = (station: number): string => line.stations[station]!.name
  const zoneName = (zone: number): string => line.zones[zone]!.name
  const taken = new Map<number, number>()
  for (const [station, zone] of places.entries()) {
    const other = taken.get(zone)
    if (other !== undefined) return `${name(other)} and ${name(station)} would both stand in ${zoneName(zone)}`
    taken.set(zone, station)
    if (line.zones[zone]!.transfer !== null) return `${name(station)} would stand in the transfer ${zoneName(zone)}`
  }
  const at = (station: number): number => fromLoad(line, places, places[station]!)
  for (const [first, second] of allBefore(line, rules)) {
    if (at(first) > at(second)) return `${name(first)} must come before ${name(second)}${whyBefore(line, first, second)}`
  }
  return null
}

/**
 * All placements that keep the rules, today's first, as far as there are at most `most` of them.
 *
 * @returns null: there are more than `most`
 * @throws RangeError  if no station may move, or a rule names a zone that cannot be taken
 */
export function allPlaces(line: LineSpec, rules: PlaceRules, most: number): Places[] | null {
  const today = placesOf(line)
  const zones = openZones(line, rules)
  const found: Places[] = whyNotPlaces(line, rules, today) === null ? [today] : []
  const key = (places: Places): string => places.join()
  const seen = new Set(found.map(key))
  let over = false
  const place = (rest: readonly number[], places: number[]): void => {
    if (over) return
    const [station, ...others] = rest
    if (station === undefined) {
      if (seen.has(key(places)) || whyNotPlaces(line, rules, places) !== null) return
      seen.add(key(places))
      found.push([...places])
      over = found.length > most
      return
    }
    for (const zone of zones) {
      if (rules.move.some((other) => other !== station && !rest.includes(other) && places[other] === zone)) continue
      const next = [...places]
      next[station] = zone
      place(others, next)
    }
  }
  place(rules.move, [...today])
  return over ? null : found
}

/** Placements one step from a given one: one station moved to a free zone, or two that change places. */
export function neighbours(line: LineSpec, rules: PlaceRules, places: Places): Places[] {
  const zones = openZones(line, rules)
  const moved = rules.move.flatMap((station) =>
    zones.filter((zone) => !places.includes(zone)).map((zone) => places.map((now, index) => (index === station ? zone : now))),
  )
  const swapped = rules.move.flatMap((a, index) =>
    rules.move.slice(index + 1).map((b) => places.map((now, station) => (station === a ? places[b]! : station === b ? places[a]! : now))),
  )
  return [...moved, ...swapped].filter((each) => whyNotPlaces(line, rules, each) === null)
}

/** Zones that movable stations may take, in travel order. */
function openZones(line: LineSpec, rules: PlaceRules): number[] {
  if (rules.move.length === 0) throw new RangeError('no station may move: name at least one')
  const staying = new Map(line.stations.flatMap(({ name, zone }, index) => (rules.move.includes(index) ? [] : [[zone, name] as const])))
  const wanted = rules.zones ?? [...line.zones.keys()].filter((zone) => line.zones[zone]!.transfer === null && !staying.has(zone))
  for (const zone of wanted) {
    const { name, transfer } = line.zones[zone]!
    if (transfer !== null) throw new RangeError(`${name} is a transfer: no station can stand there`)
    const fixed = staying.get(zone)
    if (fixed !== undefined) throw new RangeError(`${name} is taken by ${fixed}, which stays: let it move too, or leave the zone out`)
  }
  return [...wanted].sort((a, b) => a - b)
}

/** Why one comes before the other in the direction of travel, where the line says so itself. */
function whyBefore(line: LineSpec, first: number, second: number): string {
  if (line.stations[second]!.unload !== null) return ', where products leave the loop'
  return line.stations[first]!.load !== null ? ': products come onto the loop there' : ''
}

/** Work comes between the load station and the unload station, beside what the rules say. */
function allBefore(line: LineSpec, { before = [] }: PlaceRules): (readonly [number, number])[] {
  const stations = [...line.stations.keys()]
  const load = stations.filter((index) => line.stations[index]!.load !== null)
  const unload = stations.filter((index) => line.stations[index]!.unload !== null)
  const [first, last] = [load[0], unload[0]]
  // with one station for both, or several of a kind, there is no single way from load to unload
  if (load.length !== 1 || unload.length !== 1 || first === last) return [...before]
  const between = stations.filter((index) => index !== first && index !== last)
  return [...before, ...between.flatMap((index) => [[first!, index] as const, [index, last!] as const])]
}

/** Zones from the first load station on, in travel direction. */
function fromLoad(line: LineSpec, places: Places, zone: number): number {
  const load = line.stations.findIndex((station) => station.load !== null)
  const start = load < 0 ? 0 : places[load]!
  return (zone - start + line.zones.length) % line.zones.length
}
