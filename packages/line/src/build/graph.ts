/** The paths of a line as columns: which lead out of each zone and into it, what they need of a transfer, who goes first. (MODEL.md §3, §4) */
import { toGrid } from '@loopwright/kernel'
import type { LineSpec, PathSpec } from '../spec.ts'
import { STORE } from '../spec.ts'
import {
  ALTERNATE,
  FIRST,
  FIRST_FREE,
  HIGH,
  type Line,
  LOW,
  NONE,
  type PartList,
  STOPS_ALWAYS,
  STOPS_NEVER,
  STOPS_PERHAPS,
} from '../instant/state.ts'

type Graph = Pick<
  Line,
  | 'store'
  | 'paths'
  | 'isLoop'
  | 'pathFrom'
  | 'pathTo'
  | 'onlyOut'
  | 'outs'
  | 'ins'
  | 'feeders'
  | 'zoneNext'
  | 'zonePrevious'
  | 'pathIsChosen'
  | 'divert'
  | 'mergeAlternates'
  | 'mergeRank'
  | 'hasMerges'
  | 'pathFromPosition'
  | 'pathToPosition'
  | 'pathStops'
  | 'zoneChanges'
  | 'zoneRests'
  | 'zoneFixes'
  | 'backPosition'
  | 'startPosition'
  | 'changeSeconds'
>

/**
 * Whether path i leads from zone i to the next one, all round, and takes everybody.
 *
 * @example isPlainLoop(line) // => true
 */
export function isPlainLoop(spec: LineSpec): boolean {
  const zones = spec.zones.length
  return (
    spec.paths.length === zones && spec.paths.every((path, p) => path.from === p && path.to === (p + 1) % zones && !hasConditions(path))
  )
}

export function hasConditions({ takes }: PathSpec): boolean {
  return takes.variants !== null || takes.load !== null || takes.rejected !== null || takes.forStation !== null
}

const positionOf = (position: 'low' | 'high'): number => (position === 'high' ? HIGH : LOW)

export function buildGraph(spec: LineSpec): Graph {
  const store = spec.zones.length
  const place = (end: number): number => (end === STORE ? store : end)
  const paths = spec.paths.length
  const pathFrom = Int32Array.from(spec.paths, (path) => place(path.from))
  const pathTo = Int32Array.from(spec.paths, (path) => place(path.to))
  const outs = listPaths(pathFrom, store + 1)
  const ins = listPaths(pathTo, store + 1)
  const pathIsChosen = Uint8Array.from(spec.paths, (path) => (hasConditions(path) ? 1 : 0))
  const pathFromPosition = Uint8Array.from(spec.paths, (path) => positionOf(path.fromPosition))
  const pathToPosition = Uint8Array.from(spec.paths, (path) => positionOf(path.toPosition))
  const onlyOut = new Int32Array(store + 1).fill(NONE)
  const zoneNext = new Int32Array(store + 1).fill(NONE)
  const zonePrevious = new Int32Array(store + 1).fill(NONE)
  for (let zone = 0; zone < store; zone++) {
    const [out, ...moreOuts] = itemsOf(outs, zone)
    const [into, ...moreIns] = itemsOf(ins, zone)
    if (out !== undefined && moreOuts.length === 0 && pathIsChosen[out] === 0) {
      onlyOut[zone] = out
      zoneNext[zone] = pathTo[out]!
    }
    if (into !== undefined && moreIns.length === 0) zonePrevious[zone] = pathFrom[into]!
  }
  const divert = new Uint8Array(store + 1)
  spec.zones.forEach((zone, z) => {
    divert[z] = zone.divert === 'first' ? FIRST : zone.divert === 'alternate' ? ALTERNATE : FIRST_FREE
  })
  divert[store] = FIRST_FREE
  const isExitClear = (zone: number): boolean => zone !== store && spec.zones[zone]!.transfer?.enterOnlyIfExitClear === true
  return {
    store,
    paths,
    isLoop: isPlainLoop(spec) && spec.paths.every(({ manual }) => manual === null),
    pathFrom,
    pathTo,
    onlyOut,
    outs,
    ins,
    feeders: feedersOf(ins, pathFrom, store, isExitClear),
    zoneNext,
    zonePrevious,
    pathIsChosen,
    divert,
    ...merges(spec, pathTo),
    pathFromPosition,
    pathToPosition,
    ...transfers(spec, { store, outs, ins, onlyOut, pathTo, pathFromPosition, pathToPosition, divert }),
  }
}

/** Paths by the place that `end` gives, ascending. */
function listPaths(end: Int32Array, places: number): PartList {
  const lists: number[][] = Array.from({ length: places }, () => [])
  end.forEach((place, path) => {
    lists[place]!.push(path)
  })
  return toPartList(lists)
}

function toPartList(lists: readonly number[][]): PartList {
  const first = new Int32Array(lists.length + 1)
  lists.forEach((list, part) => {
    first[part + 1] = first[part]! + list.length
  })
  return { first, items: Int32Array.from(lists.flat()) }
}

const itemsOf = (list: PartList, part: number): number[] => [...list.items.subarray(list.first[part]!, list.first[part + 1]!)]

/** By zone: the places whose carriers may claim it, also through exit-clear transfers. */
function feedersOf(ins: PartList, pathFrom: Int32Array, store: number, isExitClear: (zone: number) => boolean): PartList {
  const lists = Array.from({ length: store + 1 }, (_, zone) => {
    const found: number[] = []
    const open = [zone]
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      for (const path of itemsOf(ins, next)) {
        const from = pathFrom[path]!
        if (found.includes(from)) continue
        found.push(from)
        if (isExitClear(from)) open.push(from)
      }
    }
    return found
  })
  return toPartList(lists)
}

function merges(spec: LineSpec, pathTo: Int32Array): Pick<Line, 'mergeAlternates' | 'mergeRank' | 'hasMerges'> {
  const mergeAlternates = new Uint8Array(spec.zones.length + 1)
  const mergeRank = new Int32Array(spec.paths.length)
  let hasMerges = false
  spec.zones.forEach(({ merge }, z) => {
    if (merge.kind === 'waiting') return
    hasMerges = true
    if (merge.kind === 'alternate') mergeAlternates[z] = 1
    else {
      spec.paths.forEach((path, p) => {
        const rank = merge.from.indexOf(path.from)
        if (pathTo[p] === z) mergeRank[p] = rank < 0 ? merge.from.length : rank
      })
    }
  })
  return { mergeAlternates, mergeRank, hasMerges }
}

function transfers(
  spec: LineSpec,
  graph: Pick<Graph, 'store' | 'outs' | 'ins' | 'onlyOut' | 'pathTo' | 'pathFromPosition' | 'pathToPosition' | 'divert'>,
): Pick<Graph, 'pathStops' | 'zoneChanges' | 'zoneRests' | 'zoneFixes' | 'backPosition' | 'startPosition' | 'changeSeconds'> {
  const { store, outs, ins, onlyOut, pathTo, pathFromPosition, pathToPosition, divert } = graph
  const zoneChanges = new Uint8Array(store + 1)
  const zoneRests = new Uint8Array(store + 1)
  const zoneFixes = new Uint8Array(store + 1)
  const backPosition = new Int32Array(store + 1).fill(NONE)
  const startPosition = new Uint8Array(store + 1)
  const changeSeconds = new Float64Array(2 * (store + 1))
  spec.zones.forEach(({ transfer }, z) => {
    if (transfer === null) return
    changeSeconds[2 * z + LOW] = toGrid(transfer.lowerSeconds)
    changeSeconds[2 * z + HIGH] = toGrid(transfer.liftSeconds)
    const wayIn = itemsOf(ins, z).map((path) => pathToPosition[path]!)
    const wayOut = itemsOf(outs, z).map((path) => pathFromPosition[path]!)
    const all = [...wayIn, ...wayOut]
    startPosition[z] = all[0] ?? LOW
    if (all.every((position) => position === all[0])) return
    zoneChanges[z] = 1
    zoneFixes[z] = divert[z] === FIRST_FREE && wayOut.some((position) => position !== wayOut[0]) ? 1 : 0
    if (wayIn.length > 0 && wayIn.every((position) => position === wayIn[0])) backPosition[z] = wayIn[0]!
    else zoneRests[z] = 1
  })
  const pathStops = Uint8Array.from(spec.paths, (_, p) => {
    const to = pathTo[p]!
    if (to === store || outs.first[to] === outs.first[to + 1]) return STOPS_ALWAYS
    const only = onlyOut[to]!
    if (only !== NONE && spec.paths[only]!.manual !== null) return STOPS_ALWAYS
    if (only !== NONE) return zoneChanges[to] === 1 && pathFromPosition[only] !== pathToPosition[p] ? STOPS_ALWAYS : STOPS_NEVER
    return zoneFixes[to] === 1 && spec.zones[to]!.transfer?.enterOnlyIfExitClear === false ? STOPS_ALWAYS : STOPS_PERHAPS
  })
  return { pathStops, zoneChanges, zoneRests, zoneFixes, backPosition, startPosition, changeSeconds }
}
