/** Where stations stand. */
import { completeLine, type GivenLine, type LineSpec, type Ref } from '@loopwright/line'

/** The zone of every station, by index. */
export type Places = readonly number[]

/** The zone of every station; or zone by station, each by its name or index, and the others stay. */
export type PlacesAsked = Places | Readonly<Record<string, Ref>>

/**
 * The zone of each station, by index.
 *
 * @example placesOf(line) // => [0, 2, 4]
 */
export const placesOf = (line: GivenLine): Places => completeLine(line).stations.map(({ zone }) => zone)

/**
 * The line with its stations at other places; what belongs to a station goes with it.
 *
 * @throws RangeError  if a station or zone is not known, or a station has no place
 * @example withPlaces(line, { B: 'Z5', C: 'Z7' }).stations.map(({ zone }) => zone) // => [0, 4, 6]
 * @example withPlaces(line, [0, 4, 6]).stations.map(({ zone }) => zone) // => [0, 4, 6]
 */
export function withPlaces(given: GivenLine, asked: PlacesAsked): LineSpec {
  const line = completeLine(given)
  const places = placesAsked(line, asked)
  return { ...line, stations: line.stations.map((station, index) => ({ ...station, zone: places[index]! })) }
}

const isListed = (places: PlacesAsked): places is Places => Array.isArray(places)

/**
 * The zone of every station.
 *
 * @throws RangeError  if a station or zone is not known, or a station has no place
 */
export function placesAsked(line: LineSpec, asked: PlacesAsked): Places {
  if (!isListed(asked)) {
    const places = [...placesOf(line)]
    for (const [name, zone] of Object.entries(asked)) places[indexIn('station', line.stations, name)] = indexIn('zone', line.zones, zone)
    return places
  }
  const { length } = line.stations
  if (asked.length !== length) throw new RangeError(`${length} stations take ${length} places, not ${asked.length}`)
  return asked.map((zone) => indexIn('zone', line.zones, zone))
}

/** Of a part by its name, or its index. */
export function indexIn(what: string, parts: readonly { readonly name: string }[], part: Ref): number {
  const index = typeof part === 'number' ? (part in parts ? part : -1) : parts.findIndex(({ name }) => name === part)
  if (index < 0) throw new RangeError(`there is no ${what} called "${part}"; there are ${parts.map(({ name }) => name).join(', ')}`)
  return index
}
