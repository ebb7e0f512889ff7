/** The least of something that a product needs on its way, over all ways that the line leaves open. */
import type { Stay, WalkGraph, Way } from './productWalk.ts'

/** What is counted, each ≥ 0. */
export interface Use {
  readonly stay?: (stay: Stay) => number
  /** `fromRest`, `toRest`: there is something to do at that end */
  readonly way?: (path: number, fromRest: boolean, toRest: boolean) => number
  /** where it is taken off: station, and whether it is good */
  readonly end?: (station: number, good: boolean) => number
  /** where it is never taken off */
  readonly lost?: number
}

/** By node and outcome: the way that is taken, as a place in `ways`; −1: there is none that leads out of the line. */
export type Ways = readonly (readonly number[])[]

export interface LeastUse {
  /** mean per product loaded */
  readonly perLoad: number
  /** the load that it begins with, and the ways that it takes */
  readonly start: number
  readonly ways: Ways
}

const ROUNDS_MAX = 100
const SWEEPS_MAX = 2000

/**
 * Least mean use per product loaded, over all ways that take the product off in the end; what can never be taken off counts nothing from then on.
 *
 * @returns  null where nothing that is loaded is ever taken off
 * @see Howard, Dynamic Programming and Markov Processes (1960): policy iteration, from memory
 */
export function leastUse(graph: WalkGraph, use: Use): LeastUse | null {
  if (graph.starts.length === 0) return null
  const out = waysOut(graph)
  const { ways: first, choice } = out
  let ways = first
  let values = valuesOf(graph, use, ways, out)
  for (let round = 0; choice && round < ROUNDS_MAX; round += 1) {
    let better = false
    const next = ways.map((chosen, node) =>
      chosen.map((way, outcome) => {
        if (way < 0) return way
        const all = graph.nodes[node]!.outcomes[outcome]!.ways
        const cost = (place: number): number => wayUse(graph, use, node, all[place]!) + values[all[place]!.to]!
        let best = way
        for (const place of all.keys()) {
          if (values[all[place]!.to] === Infinity) continue
          if (cost(place) < cost(best) - 1e-9 * (1 + cost(best))) best = place
        }
        if (best !== way) better = true
        return best
      }),
    )
    if (!better) break
    ways = next
    values = valuesOf(graph, use, ways, out)
  }
  const start = graph.starts.reduce((least, each) => (values[each]! < values[least]! ? each : least))
  return values[start] === Infinity ? null : { perLoad: values[start]!, start, ways }
}

/** The same for ways that are given: what else those ways need. */
export function useOnWays(graph: WalkGraph, use: Use, { start, ways }: Pick<LeastUse, 'start' | 'ways'>): number {
  return valuesOf(graph, use, ways, waysOut(graph))[start]!
}

function wayUse(graph: WalkGraph, use: Use, node: number, { path, to }: Way): number {
  return use.way?.(path, graph.nodes[node]!.stay !== null, graph.nodes[to]!.stay !== null) ?? 0
}

interface WaysOut {
  readonly ways: Ways
  readonly order: readonly number[]
  /** somewhere there is more than one way */
  readonly choice: boolean
  /** every way leads nearer to the end: one sweep in this order tells all values */
  readonly straight: boolean
}

const knownWays = new WeakMap<WalkGraph, WaysOut>()

/** Ways that lead out of the line by the fewest steps, and the nodes by these steps. */
function waysOut(graph: WalkGraph): WaysOut {
  const known = knownWays.get(graph)
  if (known !== undefined) return known
  const found = findWaysOut(graph)
  knownWays.set(graph, found)
  return found
}

function findWaysOut({ nodes }: WalkGraph): WaysOut {
  const from: number[][] = nodes.map(() => [])
  const steps = new Array<number>(nodes.length).fill(Infinity)
  const order: number[] = []
  nodes.forEach(({ outcomes }, node) => {
    for (const { end, ways } of outcomes) {
      if (end !== null && steps[node] === Infinity) {
        steps[node] = 0
        order.push(node)
      }
      for (const { to } of ways) from[to]!.push(node)
    }
  })
  for (let at = 0; at < order.length; at += 1) {
    const node = order[at]!
    for (const before of from[node]!) {
      if (steps[before] !== Infinity) continue
      steps[before] = steps[node]! + 1
      order.push(before)
    }
  }
  const ways = nodes.map(({ outcomes }) =>
    outcomes.map((outcome) => {
      const nearest = outcome.ways.reduce((best, { to }, place) => {
        if (steps[to] === Infinity) return best
        return best < 0 || steps[to]! < steps[outcome.ways[best]!.to]! ? place : best
      }, -1)
      return nearest
    }),
  )
  const choice = nodes.some(({ outcomes }) => outcomes.some((outcome) => outcome.ways.length > 1))
  const straight = order.every((node) =>
    nodes[node]!.outcomes.every((outcome) => outcome.ways.every(({ to }) => steps[to]! < steps[node]! || steps[to] === Infinity)),
  )
  return { ways, order, choice, straight }
}

/** Mean use from each node on; Infinity where none leads out. */
function valuesOf(graph: WalkGraph, use: Use, ways: Ways, { order, straight }: Pick<WaysOut, 'order' | 'straight'>): Float64Array {
  const { nodes } = graph
  const values = new Float64Array(nodes.length).fill(Infinity)
  for (const node of order) values[node] = 0
  for (let sweep = 0; sweep < SWEEPS_MAX; sweep += 1) {
    let change = 0
    for (const node of order) {
      const { stay, outcomes } = nodes[node]!
      let value = stay === null ? 0 : (use.stay?.(stay) ?? 0)
      for (let index = 0; index < outcomes.length; index += 1) {
        const { probability, end, ways: all } = outcomes[index]!
        const chosen = ways[node]![index]!
        if (end !== null) value += probability * (use.end?.(stay!.station, end === 'good') ?? 0)
        else if (chosen < 0) value += probability * (use.lost ?? 0)
        else value += probability * (wayUse(graph, use, node, all[chosen]!) + values[all[chosen]!.to]!)
      }
      change = Math.max(change, Math.abs(value - values[node]!) / (1 + value))
      values[node] = value
    }
    if (straight || change < 1e-12) break
  }
  return values
}
