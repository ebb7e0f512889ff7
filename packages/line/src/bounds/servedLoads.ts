/** Load stations that empty carriers come to, lap after lap: the first on each way from where they are emptied. (MODEL.md §5) */
import { type LineSpec, type PathSpec, STORE } from '../spec.ts'

/**
 * Indices of the load stations that have anything to load in the long run, ascending. One behind another on the only way has nothing: the
 * first has loaded every carrier. Where nothing is ever taken off, all of them.
 *
 * @example servedLoads(line) // => [0]
 */
export function servedLoads(spec: Pick<LineSpec, 'stations' | 'paths'>): number[] {
  const loads = new Map(spec.stations.flatMap(({ load, zone }, station) => (load === null ? [] : [[zone, station] as const])))
  const emptied = spec.stations.filter(({ unload, load }) => unload !== null && load === null).map(({ zone }) => zone)
  // what is taken off and loaded in one stay needs no empty carrier
  const served = new Set([...loads.values()].filter((station) => spec.stations[station]!.unload !== null))
  const ends = new Map<number, number[]>()
  for (const { from, to } of spec.paths.filter(mayBeEmpty)) ends.set(from, [...(ends.get(from) ?? []), to])
  const seen = new Set<number>([STORE, ...emptied])
  for (const place of seen)
    for (const to of ends.get(place) ?? []) {
      const load = loads.get(to)
      if (load === undefined) seen.add(to)
      else served.add(load)
    }
  return [...(served.size === 0 ? loads.values() : served)].sort((a, b) => a - b)
}

/** An empty carrier has no variant and is not rejected. */
const mayBeEmpty = ({ takes }: PathSpec): boolean => takes.load !== 'loaded' && takes.variants === null && takes.rejected !== true
