/** What `order` is asked, from names to indices: which stations move, where to, what comes before what, an order given by hand. */

import type { LineSpec } from '@loopwright/line'
import { type PlaceRules, type Places, placesOf } from '@loopwright/study'
import { InvalidArgumentError } from 'commander'
import { Misuse } from './shell.ts'

export interface OrderFlags {
  readonly move?: readonly string[]
  readonly keep?: readonly string[]
  readonly before?: readonly string[]
  readonly zones?: readonly string[]
  readonly mine?: string
}

/** Names separated by commas. */
export function nameList(text: string): string[] {
  const names = text.split(',').map((name) => name.trim())
  if (names.some((name) => name === '')) throw new InvalidArgumentError('Write names separated by commas, such as S4,S5.')
  return names
}

/**
 * The rules of an order question.
 *
 * @throws Misuse  with what is not known, and what there is
 */
export function orderRules(line: LineSpec, flags: OrderFlags): PlaceRules & { readonly mine?: Places } {
  const stations = line.stations.map(({ name }) => name)
  const station = (name: string): number => indexOf(stations, name, 'station')
  const keep = (flags.keep ?? []).map(station)
  const move = flags.move === undefined ? workStations(line).filter((index) => !keep.includes(index)) : flags.move.map(station)
  const both = move.find((index) => keep.includes(index))
  if (both !== undefined) throw new Misuse(`${stations[both]} is named under --move and under --keep; name it once`)
  const zones = flags.zones === undefined ? undefined : zoneList(line, flags.zones)
  const before = (flags.before ?? []).flatMap((rule) => chain(rule, station))
  const mine = flags.mine === undefined ? undefined : byHand(line, flags.mine, station)
  return { move, before, ...(zones === undefined ? {} : { zones }), ...(mine === undefined ? {} : { mine }) }
}

/** Stations with work and neither load nor unload: those that may move where nothing is said. */
function workStations(line: LineSpec): number[] {
  return line.stations.flatMap(({ load, unload, work }, index) => (work !== null && load === null && unload === null ? [index] : []))
}

/** "S3<S4<S5" */
function chain(rule: string, station: (name: string) => number): [number, number][] {
  const names = rule.split('<').map((name) => name.trim())
  if (names.length < 2) throw new Misuse(`--before "${rule}": write what comes first on the left, such as "S3<S4"`)
  const indices = names.map(station)
  return indices.slice(1).map((second, place) => [indices[place]!, second])
}

/** "Z13..Z16", "Z13,Z20": a range follows the travel direction. */
function zoneList(line: LineSpec, parts: readonly string[]): number[] {
  const names = line.zones.map(({ name }) => name)
  const zones = parts.flatMap((part) => {
    const [from = '', to] = part.split('..').map((name) => name.trim())
    const first = indexOf(names, from, 'zone')
    if (to === undefined) return [first]
    const count = ((indexOf(names, to, 'zone') - first + names.length) % names.length) + 1
    // of a range only what can be taken: a transfer, or a station that stays, is no mistake there
    return Array.from({ length: count }, (_, step) => (first + step) % names.length).filter((zone) => line.zones[zone]!.transfer === null)
  })
  return [...new Set(zones)]
}

/** "S5@Z14,S4@Z15" */
function byHand(line: LineSpec, text: string, station: (name: string) => number): Places {
  const names = line.zones.map(({ name }) => name)
  const places = [...placesOf(line)]
  for (const part of nameList(text)) {
    const [who = '', where, ...rest] = part.split('@').map((name) => name.trim())
    if (where === undefined || rest.length > 0) throw new Misuse(`--mine "${part}": write station@zone, such as S5@Z14`)
    places[station(who)] = indexOf(names, where, 'zone')
  }
  return places
}

function indexOf(names: readonly string[], name: string, what: string): number {
  const index = names.indexOf(name)
  if (index < 0) throw new Misuse(`there is no ${what} "${name}"; there are ${names.join(', ')}`)
  return index
}
