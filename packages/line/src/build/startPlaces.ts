/** Where the carriers stand at time 0. (MODEL.md §10) */
import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { type LineSpec, STORE } from '../spec.ts'

/**
 * Zones in which the carriers stand at time 0, by carrier.
 *
 * `spread`: carrier c in the ⌊c·K/N⌋-th of the K zones that are no exit-clear transfers; `packed`: in the first N of them; `store`: STORE for all; or as listed.
 *
 * @throws RangeError  if there are more carriers than places, or a list of the wrong length, or two in one zone
 * @example startZones(line) // => [0, 2, 5]
 */
export function startZones(given: GivenLine): number[] {
  return placesAtStart(completeLine(given))
}

function placesAtStart({ carriers, zones, paths }: LineSpec): number[] {
  const { count, start } = carriers
  const inStore = start === 'store' || (typeof start !== 'string' && start.includes(STORE))
  if (inStore && !paths.some(({ from }) => from === STORE)) throw new RangeError('carriers start in the store, but no path leads out of it')
  if (typeof start !== 'string') {
    if (start.length !== count) throw new RangeError(`${count} carriers cannot start in ${start.length} places`)
    const standing = start.filter((zone) => zone !== STORE)
    if (new Set(standing).size !== standing.length) throw new RangeError('two carriers start in one zone')
    return [...start]
  }
  const places: number[] = []
  for (let zone = 0; zone < zones.length; zone++) if (zones[zone]!.transfer?.enterOnlyIfExitClear !== true) places.push(zone)
  if (start !== 'store' && count > places.length) throw new RangeError(`${count} carriers cannot start in ${places.length} places`)
  const found: number[] = []
  for (let carrier = 0; carrier < count; carrier++)
    found.push(start === 'store' ? STORE : places[start === 'packed' ? carrier : Math.floor((carrier * places.length) / count)]!)
  return found
}

/** The same as places in the columns. */
export const startPlaces = (spec: LineSpec): Int32Array =>
  Int32Array.from(placesAtStart(spec), (zone) => (zone === STORE ? spec.zones.length : zone))
