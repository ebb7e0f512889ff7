/** Which stations may move, in names, as a notebook writes it. */
import type { LineSpec } from '@loopwright/line'
import { type PlaceRules, type Places, placesOf } from '@loopwright/study/change'

/** Which stations may move, by name. */
export interface PlaceRequest {
  /** names of the stations that may move */
  readonly move: readonly string[]
  /** names of the zones that they may take; default: every zone without a transfer and without a station that stays */
  readonly zones?: readonly string[]
  /** names of stations: each pair is [what comes first, what comes after] */
  readonly before?: readonly (readonly [string, string])[]
  /** an order given by hand: zone by station; the others stay */
  readonly mine?: Readonly<Record<string, string>>
}

/** @throws RangeError  if a station or zone is not known */
export function placeRules(line: LineSpec, { move, zones, before, mine }: PlaceRequest): PlaceRules & { readonly mine?: Places } {
  const indexIn = (what: string, names: readonly string[], name: string): number => {
    const index = names.indexOf(name)
    if (index < 0) throw new RangeError(`there is no ${what} called "${name}"; there are ${names.join(', ')}`)
    return index
  }
  const stations = line.stations.map(({ name }) => name)
  const zoneNames = line.zones.map(({ name }) => name)
  const station = (name: string): number => indexIn('station', stations, name)
  const zone = (name: string): number => indexIn('zone', zoneNames, name)
  const byHand = (): Places => {
    const places = [...placesOf(line)]
    for (const [name, where] of Object.entries(mine!)) places[station(name)] = zone(where)
    return places
  }
  return {
    move: move.map(station),
    ...(zones === undefined ? {} : { zones: zones.map(zone) }),
    ...(before === undefined ? {} : { before: before.map(([first, after]) => [station(first), station(after)] as const) }),
    ...(mine === undefined ? {} : { mine: byHand() }),
  }
}
