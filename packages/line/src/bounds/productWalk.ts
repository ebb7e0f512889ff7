/**
 * Where one product of a variant may go, from its load until it is taken off: every stay with its work, every outcome of an inspection, every way out that the
 * line leaves open. What passes is decided by the rules of the line; where it may be either way, both are there. (MODEL.md §3, §5)
 */
import { hasConditions } from '../build/graph.ts'
import { type LineSpec, type PathSpec, STORE, type StationSpec, type TaskSpec } from '../spec.ts'
import { meanSeconds } from './meanSeconds.ts'
import { servedLoads } from './servedLoads.ts'

/** One stay with something to do, in mean seconds. */
export interface Stay {
  readonly station: number
  readonly workSeconds: number
  /** 0 where the carrier is loaded anew in the same stay, which then has it */
  readonly releaseSeconds: number
  /** the move in and the clear out belong to this product: not where the carrier that brought it takes the next one */
  readonly exchanges: boolean
}

export interface Outcome {
  readonly probability: number
  /** the product is taken off here; null: it goes on */
  readonly end: 'good' | 'rejected' | null
  /** ways on; more than one where the line leaves it open, none where it stays for ever */
  readonly ways: readonly Way[]
}

export interface Way {
  /** index */
  readonly path: number
  /** place in `WalkGraph.nodes` */
  readonly to: number
}

/** An arrival in a zone. */
export interface WalkNode {
  readonly stay: Stay | null
  readonly outcomes: readonly Outcome[]
}

export interface WalkGraph {
  readonly nodes: readonly WalkNode[]
  /** loads that a product may begin with: places in `nodes` */
  readonly starts: readonly number[]
}

interface Product {
  readonly had: ReadonlySet<number>
  readonly listed: ReadonlySet<number>
  readonly rejected: boolean
}

/** more than that is not looked at */
const NODES_MAX = 20_000

/**
 * All that may become of a product of this variant.
 *
 * @returns  null where there is more to it than can be looked at
 */
export function productWalk(spec: LineSpec, variant: number): WalkGraph | null {
  const stationAt = new Map(spec.stations.map((station, index) => [station.zone, index]))
  const outs = new Map<number, number[]>()
  spec.paths.forEach(({ from }, path) => {
    outs.set(from, [...(outs.get(from) ?? []), path])
  })
  const nodes: { stay: Stay | null; outcomes: Outcome[] }[] = []
  const known = new Map<string, number>()
  const open: { place: number; product: Product; node: number }[] = []
  const nodeOf = (place: number, product: Product): number => {
    const key = `${place}|${[...product.had].sort().join()}|${[...product.listed].sort().join()}|${product.rejected}`
    const there = known.get(key)
    if (there !== undefined) return there
    const node = nodes.push({ stay: null, outcomes: [] }) - 1
    known.set(key, node)
    open.push({ place, product, node })
    return node
  }
  const goOn = (place: number, results: readonly Result[]): Outcome[] =>
    results.map(({ probability, end, product }) => {
      if (end !== null) return { probability, end, ways: [] }
      const ways = waysLeft(spec, outs.get(place) ?? [], place, (path) => takes(spec, path, variant, product))
      return { probability, end, ways: ways.map((path) => ({ path, to: nodeOf(spec.paths[path]!.to, product) })) }
    })
  const starts: number[] = []
  for (const index of servedLoads(spec)) {
    const station = spec.stations[index]!
    const { stay, results } = loaded(spec, station, index, variant)
    const node = nodes.push({ stay, outcomes: [] }) - 1
    starts.push(node)
    nodes[node]!.outcomes = goOn(station.zone, results)
  }
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (nodes.length > NODES_MAX) return null
    const { place, product, node } = next
    const index = stationAt.get(place)
    const came = index === undefined ? null : arrived(spec, spec.stations[index]!, index, variant, product)
    const { stay, results } = came ?? { stay: null, results: [{ probability: 1, end: null, product }] }
    nodes[node] = { stay, outcomes: goOn(place, results) }
  }
  return { nodes, starts }
}

interface Result {
  readonly probability: number
  readonly end: Outcome['end']
  readonly product: Product
}

const NEW: Product = { had: new Set(), listed: new Set(), rejected: false }

function loaded(spec: LineSpec, station: StationSpec, index: number, variant: number): { stay: Stay; results: Result[] } {
  const first = done(spec, station.load!, variant, NEW, false)
  const after = first.results.map(({ probability, product }) => {
    // what was rejected in this stay is not mended in it
    const work = done(spec, station.work ?? [], variant, product, product.rejected)
    return { probability, work }
  })
  const workSeconds = first.seconds + after.reduce((sum, { probability, work }) => sum + probability * work.seconds, 0)
  const results = after.flatMap(({ probability, work }) =>
    work.results.map((each) => ({ ...each, probability: probability * each.probability })),
  )
  return { stay: { station: index, workSeconds, releaseSeconds: meanSeconds(station.releaseSeconds), exchanges: true }, results }
}

function arrived(
  spec: LineSpec,
  station: StationSpec,
  index: number,
  variant: number,
  product: Product,
): { stay: Stay; results: Result[] } | null {
  const times = (station.unload ?? []).filter(({ seconds }) => seconds[variant] != null)
  const accepts = station.accepts === 'all' || (station.accepts === 'rejected') === product.rejected
  if (station.unload !== null && accepts && (station.unload.length === 0 || times.length > 0)) {
    const due = times.filter(({ task }) => isDue(spec, product, task, false))
    const workSeconds = due.reduce((sum, { seconds }) => sum + meanSeconds(seconds[variant]!), 0)
    const again = station.load !== null
    const releaseSeconds = again ? 0 : meanSeconds(station.releaseSeconds)
    const end = product.rejected ? 'rejected' : 'good'
    return { stay: { station: index, workSeconds, releaseSeconds, exchanges: !again }, results: [{ probability: 1, end, product }] }
  }
  const work = done(spec, station.work ?? [], variant, product, false)
  if (!work.any) return null
  const releaseSeconds = meanSeconds(station.releaseSeconds)
  return { stay: { station: index, workSeconds: work.seconds, releaseSeconds, exchanges: true }, results: work.results }
}

/** What tasks do to a product; `fresh`: it was rejected in this very stay. */
function done(
  spec: LineSpec,
  tasks: readonly TaskSpec[],
  variant: number,
  product: Product,
  fresh: boolean,
): { seconds: number; any: boolean; results: Result[] } {
  const due = tasks.filter(({ task, seconds }) => seconds[variant] != null && isDue(spec, product, task, fresh))
  if (due.length === 0) return { seconds: 0, any: false, results: [{ probability: 1, end: null, product }] }
  const seconds = due.reduce((sum, each) => sum + meanSeconds(each.seconds[variant]!), 0)
  const names = due.map(({ task }) => task)
  const had = new Set([...product.had, ...names])
  const listed = new Set([...product.listed].filter((task) => !names.includes(task)))
  const mended = listed.size < product.listed.size && listed.size === 0
  const passed: Product = { had, listed, rejected: product.rejected && !mended }
  const pass = spec.inspections.filter(({ task }) => names.includes(task)).reduce((p, { rejectProbability: r }) => p * (1 - r), 1)
  const again = spec.rework.filter(({ task, only }) => only || had.has(task)).map(({ task }) => task)
  const failed: Product = { had, listed: new Set(again), rejected: true }
  const results: Result[] = [
    { probability: pass, end: null, product: passed },
    { probability: 1 - pass, end: null, product: failed },
  ]
  return { seconds, any: true, results: results.filter(({ probability }) => probability > 0) }
}

function isDue(spec: LineSpec, { had, listed }: Product, task: number, fresh: boolean): boolean {
  if (listed.has(task)) return !fresh
  return !had.has(task) && !spec.rework.some((rework) => rework.task === task && rework.only)
}

/** The ways that the rules leave to a loaded carrier. */
function waysLeft(spec: LineSpec, paths: readonly number[], place: number, holds: (path: PathSpec) => boolean): number[] {
  const all = paths.map((path) => ({ path, spec: spec.paths[path]! }))
  const chosen = all.filter(({ spec: path }) => hasConditions(path) && holds(path))
  const rejects = chosen.filter(({ spec: path }) => path.takes.rejected === true)
  const left = rejects.length > 0 ? rejects : chosen.length > 0 ? chosen : all.filter(({ spec: path }) => !hasConditions(path))
  const first = place !== STORE && spec.zones[place]!.divert === 'first'
  return (first ? left.slice(0, 1) : left).map(({ path }) => path)
}

function takes(spec: LineSpec, { takes: wanted }: PathSpec, variant: number, product: Product): boolean {
  if (wanted.load === 'empty') return false
  if (wanted.variants !== null && !wanted.variants.includes(variant)) return false
  if (wanted.rejected !== null && wanted.rejected !== product.rejected) return false
  return wanted.forStation === null || arrived(spec, spec.stations[wanted.forStation]!, wanted.forStation, variant, product) !== null
}
