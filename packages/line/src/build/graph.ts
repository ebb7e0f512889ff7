/** The paths of a line as columns: which lead out of each zone and into it, what they need of a transfer, who goes first. (MODEL.md §3, §4) */
import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { toGrid } from '@loopwright/kernel'
import type { LineSpec, PathSpec } from '../spec.ts'
import { STORE } from '../spec.ts'
import { ALTERNATE, FIRST, FIRST_FREE, type Graph, STOPS_ALWAYS, STOPS_NEVER, STOPS_PERHAPS } from '../state/graph.ts'
import { NONE, type PartList } from '../state/lists.ts'
import { HIGH, LOW, type Transfers } from '../state/transfers.ts'

/** What of the transfers follows from the paths. */
type Changes = Omit<Transfers, 'zonePosition' | 'zoneChange' | 'changeList'>

/**
 * Whether path i leads from zone i to the next one, all round, and takes everybody.
 *
 * @example isPlainLoop(line) // => true
 */
export function isPlainLoop(given: GivenLine): boolean {
  const spec = completeLine(given)
  const zones = spec.zones.length
  return (
    spec.paths.length === zones && spec.paths.every((path, p) => path.from === p && path.to === (p + 1) % zones && !hasConditions(path))
  )
}

export function hasConditions({ takes }: PathSpec): boolean {
  return takes.variants !== null || takes.load !== null || takes.rejected !== null || takes.forStation !== null
}

const positionOf = (position: 'low' | 'high'): number => (position === 'high' ? HIGH : LOW)

export function buildGraph(spec: LineSpec): { readonly graph: Graph; readonly changes: Changes } {
  const store = spec.zones.length
  const place = (end: number): number => (end === STORE ? store : end)
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
  for (let zone = 0; zone <= store; zone++) {
    const [out, ...moreOuts] = itemsOf(outs, zone)
    const [into, ...moreIns] = itemsOf(ins, zone)
    if (out !== undefined && moreOuts.length === 0 && pathIsChosen[out] === 0) {
      onlyOut[zone] = out
      zoneNext[zone] = pathTo[out]!
    }
    if (zone < store && into !== undefined && moreIns.length === 0) zonePrevious[zone] = pathFrom[into]!
  }
  const divert = new Uint8Array(store + 1)
  spec.zones.forEach((zone, z) => {
    divert[z] = zone.divert === 'first' ? FIRST : zone.divert === 'alternate' ? ALTERNATE : FIRST_FREE
  })
  divert[store] = FIRST_FREE
  const exitClear = Uint8Array.from({ length: store + 1 }, (_, zone) => (spec.zones[zone]?.transfer?.enterOnlyIfExitClear === true ? 1 : 0))
  const changes = changesOf(spec, { outs, ins, divert }, pathFromPosition, pathToPosition)
  const graph = {
    isLoop: isPlainLoop(spec) && spec.paths.every(({ manual }) => manual === null),
    pathFrom,
    pathTo,
    onlyOut,
    outs,
    ins,
    feeders: feedersOf(ins, pathFrom, exitClear),
    zoneNext,
    zonePrevious,
    pathIsChosen,
    divert,
    ...merges(spec, pathTo),
    pathStops: stopsOf(spec, { outs, onlyOut, pathTo }, changes),
    exitClear,
    manualStation: Int32Array.from(spec.paths, ({ manual }) => manual?.station ?? NONE),
  }
  return { graph, changes }
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
function feedersOf(ins: PartList, pathFrom: Int32Array, exitClear: Uint8Array): PartList {
  const lists = Array.from(exitClear, (_, zone) => {
    const found: number[] = []
    const open = [zone]
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      for (const path of itemsOf(ins, next)) {
        const from = pathFrom[path]!
        if (found.includes(from)) continue
        found.push(from)
        if (exitClear[from] === 1) open.push(from)
      }
    }
    return found
  })
  return toPartList(lists)
}

function merges(spec: LineSpec, pathTo: Int32Array): Pick<Graph, 'mergeAlternates' | 'mergeRank' | 'hasMerges'> {
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

/** Where transfers stand for their ways, and how long they take. */
function changesOf(
  spec: LineSpec,
  { outs, ins, divert }: Pick<Graph, 'outs' | 'ins' | 'divert'>,
  pathFromPosition: Uint8Array,
  pathToPosition: Uint8Array,
): Changes {
  const places = spec.zones.length + 1
  const zoneChanges = new Uint8Array(places)
  const zoneRests = new Uint8Array(places)
  const zoneFixes = new Uint8Array(places)
  const backPosition = new Int32Array(places).fill(NONE)
  const startPosition = new Uint8Array(places)
  const changeSeconds = new Float64Array(2 * places)
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
  return { zoneChanges, zoneRests, zoneFixes, backPosition, startPosition, changeSeconds, pathFromPosition, pathToPosition }
}

/** Whether the end of each path stops a carrier that has no work there. */
function stopsOf(
  spec: LineSpec,
  { outs, onlyOut, pathTo }: Pick<Graph, 'outs' | 'onlyOut' | 'pathTo'>,
  { zoneChanges, zoneFixes, pathFromPosition, pathToPosition }: Changes,
): Uint8Array {
  return Uint8Array.from(spec.paths, ({ to: end }, p) => {
    const to = pathTo[p]!
    if (end === STORE || outs.first[to] === outs.first[to + 1]) return STOPS_ALWAYS
    const only = onlyOut[to]!
    if (only !== NONE && spec.paths[only]!.manual !== null) return STOPS_ALWAYS
    if (only !== NONE) return zoneChanges[to] === 1 && pathFromPosition[only] !== pathToPosition[p] ? STOPS_ALWAYS : STOPS_NEVER
    if (zoneFixes[to] === 1 && spec.zones[to]!.transfer?.enterOnlyIfExitClear === false) return STOPS_ALWAYS
    const ways = itemsOf(outs, to).map((way) => spec.paths[way]!)
    const hasWay = ways.some((way) => !hasConditions(way))
    return hasWay && zoneChanges[to] === 0 && ways.every(({ manual }) => manual === null) ? STOPS_NEVER : STOPS_PERHAPS
  })
}
