/** Which stations may move, by their names or their places in the line's lists. */
import type { LineSpec, Ref } from '@loopwright/line'
import { indexIn, type Places, type PlacesAsked, placesAsked } from './places.ts'
import type { PlaceRules } from './stationPlaces.ts'

/** Which stations may move, and where to: each by its name, or its index. */
export interface PlaceRequest {
  /** the stations that may move, at least one */
  readonly move: readonly Ref[]
  /** the zones that they may take; default: every zone without a transfer and without a station that stays */
  readonly zones?: readonly Ref[]
  /** stations: each pair is [what comes first, what comes after] */
  readonly before?: readonly (readonly [Ref, Ref])[]
  /** an order given by hand, tried as it is, whatever the rules say of it */
  readonly mine?: PlacesAsked
}

/** @throws RangeError  if a station or zone is not known */
export function placeRules(line: LineSpec, { move = [], zones, before, mine }: PlaceRequest): PlaceRules & { readonly mine?: Places } {
  return {
    move: move.map((one) => indexIn('station', line.stations, one)),
    ...(zones === undefined ? {} : { zones: zones.map((one) => indexIn('zone', line.zones, one)) }),
    ...(before === undefined
      ? {}
      : { before: before.map(([a, b]) => [indexIn('station', line.stations, a), indexIn('station', line.stations, b)]) }),
    ...(mine === undefined ? {} : { mine: placesAsked(line, mine) }),
  }
}
