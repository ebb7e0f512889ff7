/** Lines in which much happens in a short stretch. */
import type { LineSpec } from '@loopwright/line'
import { isRing } from '@loopwright/line/check'
import { distributionKinds } from '@loopwright/stats'

/** seconds; a longer stretch would only take longer */
const STRETCH = 1500
const KINDS: ReadonlySet<unknown> = new Set(distributionKinds().map(({ kind }) => kind))

/** The same line with times of some seconds in place of all its distributions, so that much happens in a short stretch. */
export function lively(line: LineSpec): LineSpec {
  const walk = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((item) => walk(item, key))
    if (typeof value !== 'object' || value === null) return value
    if ('kind' in value && KINDS.has(value.kind)) {
      const scale = 1 + (JSON.stringify(value).length % 7)
      return { kind: 'exponential', mean: key === 'timeToFailureSeconds' ? 20 * scale : scale }
    }
    return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, walk(inner, name)]))
  }
  const quick = walk(line, '') as LineSpec
  const isLoop = isRing(line)
  return {
    ...quick,
    ...{ stations: quick.stations.map(busy), carriers: isLoop ? roomy(quick) : quick.carriers },
    paths: isLoop && quick.stations.length > 0 && line.zones.length % 2 === 0 ? pushed(quick) : quick.paths,
    window: { warmupSeconds: STRETCH / 5, endSeconds: STRETCH },
  }
}

/** The first station loads and unloads, so that products go round. */
const busy = (station: LineSpec['stations'][number], index: number): LineSpec['stations'][number] =>
  index > 0 ? station : { ...station, load: station.load ?? [], unload: station.unload ?? [], accepts: 'all' }

/** A loop half full goes round. */
function roomy({ carriers, zones }: LineSpec): LineSpec['carriers'] {
  const places = zones.filter(({ transfer }) => transfer?.enterOnlyIfExitClear !== true).length
  return { ...carriers, count: Math.max(1, places >> 1), start: 'spread' }
}

/** The last path of a loop by hand. */
const pushed = ({ paths }: LineSpec): LineSpec['paths'] =>
  paths.map((path, p) =>
    p < paths.length - 1
      ? path
      : { ...path, manual: { kind: 'push', station: 0 }, moveSeconds: { kind: 'exponential', mean: 4 }, clearSeconds: 'move' },
  )
