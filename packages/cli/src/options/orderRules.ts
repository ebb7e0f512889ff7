/** What `order` is asked, from names to indices: which stations move, where to, what comes before what, an order given by hand. */

import type { LineSpec } from '@loopwright/line'
import { type PlaceRules, type Places, placesOf } from '@loopwright/study/change'
import { nameList } from './arguments.ts'
import { Misuse } from '../shell/shell.ts'

export interface OrderFlags {
  readonly move?: readonly string[]
  /** those that stay where they are */
  readonly stay?: readonly string[]
  readonly before?: readonly string[]
  readonly zones?: readonly string[]
  /** an order given by hand */
  readonly try?: string
}

/**
 * The rules of an order question.
 *
 * @throws Misuse  with what is not known, and what there is
 */
export function orderRules(line: LineSpec, flags: OrderFlags): PlaceRules & { readonly mine?: Places } {
  const stations = line.stations.map(({ name }) => name)
  const station = (name: string): number => indexOf(stations, name, 'station')
  const stay = (flags.stay ?? []).map(station)
  const move = flags.move === undefined ? workStations(line).filter((index) => !stay.includes(index)) : flags.move.map(station)
  const both = move.find((index) => stay.includes(index))
  if (both !== undefined) throw new Misuse(`${stations[both]} is named under --move and under --stay; name it once`)
  const zones = flags.zones === undefined ? undefined : zoneList(line, flags.zones)
  const before = (flags.before ?? []).flatMap((rule) => chain(rule, station))
  const against = againstFlow(line, before) ?? inACircle(line, before) ?? fixedOtherwise(line, before, move)
  if (against !== null) throw new Misuse(`--before: ${against}`)
  const mine = flags.try === undefined ? undefined : byHand(line, flags.try, station)
  return { move, before, ...(zones === undefined ? {} : { zones }), ...(mine === undefined ? {} : { mine }) }
}

/** Stations with work and neither load nor unload: those that may move where nothing is said. */
function workStations(line: LineSpec): number[] {
  return line.stations.flatMap(({ load, unload, work }, index) => (work !== null && load === null && unload === null ? [index] : []))
}

type Rule = readonly [first: number, second: number]

/** A rule that no order can keep, since products enter the loop at one place and leave it at another; null: there is none. */
function againstFlow({ stations }: LineSpec, rules: readonly Rule[]): string | null {
  const only = (duty: 'load' | 'unload'): number | null => {
    const found = [...stations.keys()].filter((index) => stations[index]![duty] !== null)
    return found.length === 1 ? found[0]! : null
  }
  const [load, unload] = [only('load'), only('unload')]
  if (load === null || unload === null || load === unload) return null
  const name = (index: number): string => stations[index]!.name
  for (const [first, second] of rules) {
    const rule = `"${name(first)}<${name(second)}" runs against the flow: `
    if (second === load) return `${rule}products come onto the loop at ${name(load)}, so that no station comes before it`
    if (first === unload) return `${rule}products leave the loop at ${name(unload)}, so that no station comes after it`
  }
  return null
}

/** Rules of which each keeps the other from being kept; null: there are none. */
function inACircle({ stations }: LineSpec, rules: readonly Rule[]): string | null {
  const after = (from: number, way: readonly number[]): readonly number[] | null => {
    for (const [first, second] of rules) {
      if (first !== from) continue
      if (second === way[0]) return [...way, second]
      const found = way.includes(second) ? null : after(second, [...way, second])
      if (found !== null) return found
    }
    return null
  }
  for (const [first] of rules) {
    const way = after(first, [first])
    if (way !== null)
      return `"${way.map((index) => stations[index]!.name).join('<')}" comes back to where it began; leave one of the rules out`
  }
  return null
}

/** A rule about two stations that stand the other way round, and of which none may move; null: there is none. */
function fixedOtherwise(line: LineSpec, rules: readonly Rule[], move: readonly number[]): string | null {
  const { stations, zones } = line
  const load = stations.findIndex((each) => each.load !== null)
  const from = load < 0 ? 0 : stations[load]!.zone
  const at = (index: number): number => (stations[index]!.zone - from + zones.length) % zones.length
  const wrong = rules.find(([first, second]) => at(first) > at(second) && !move.includes(first) && !move.includes(second))
  if (wrong === undefined) return null
  const [first, second] = wrong.map((index) => stations[index]!.name)
  return `${second} stands before ${first} and neither may move; name one of them under --move, or write "${second}<${first}"`
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
    if (where === undefined || rest.length > 0) throw new Misuse(`--try "${part}": write station@zone, such as S5@Z14`)
    places[station(who)] = indexOf(names, where, 'zone')
  }
  return places
}

function indexOf(names: readonly string[], name: string, what: string): number {
  const index = names.indexOf(name)
  if (index < 0) throw new Misuse(`there is no ${what} "${name}"; there are ${names.join(', ')}`)
  return index
}
