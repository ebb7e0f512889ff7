/** Which lines the recursion holds for. */
import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { buildLine } from '../build/build.ts'
import { PACE_CLEAR } from '../moves/motion.ts'
import type { BreakdownSpec, LineSpec, PathSpec, StationSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'

/** Whether a line can be run without a queue. */
export interface RecursionFit {
  readonly holds: boolean
  /** the first thing that speaks against it, a clause for a sentence; null where it holds */
  readonly why: string | null
}

/**
 * Whether the recursion holds for a line, so that `engine: 'auto'` takes it: where nothing can freeze a move but the transfer that it leaves, where products are loaded and
 * taken off at one station each, so that visits come in the order of time, and where the line cannot stand still. (MODEL.md §12)
 *
 * @throws RangeError  if the line cannot be run
 * @example canRecur(line) // => { holds: true, why: null }
 */
export function canRecur(given: GivenLine): RecursionFit {
  const spec = completeLine(given)
  const why = whyNoRecursion(buildLine(spec))
  return { holds: why === null, why }
}

/** Null where it holds. */
export function whyNoRecursion(line: Line): string | null {
  const { spec, zones } = line
  const { stations, carriers, mix } = spec
  const shape = whyNoPlainLoop(spec)
  if (shape !== null) return shape
  if (!line.graph.isLoop) return 'some path has conditions'
  if (mix.kind === 'list') return 'its list of products comes to an end'
  if (spec.breaks.length > 0 && !spec.conveyorDuringBreaks) return 'the conveyor stops in breaks'
  if (stations.filter(({ load }) => load !== null).length > 1) return 'products are loaded at several stations'
  if (stations.filter(({ unload }) => unload !== null).length > 1) return 'products are taken off at several stations'
  const places = line.graph.exitClear.subarray(0, zones).reduce((sum, is) => sum + 1 - is, 0)
  if (carriers.count >= places) return `${carriers.count} carriers have ${places} zones to wait in, so that it may stand still`
  return spec.breakdowns.map((stop) => whyFreezes(line, stop)).find((why) => why !== null) ?? null
}

/** Why the stop may catch a carrier in the middle of a move; null: it never does. */
function whyFreezes(line: Line, { name, part, clock }: BreakdownSpec): string | null {
  if (clock !== 'operating') return `stop "${name}" comes by the clock, whatever its part does`
  if (part.kind === 'station') return null
  if (part.kind !== 'transfer') return `stop "${name}" holds the moves of a ${part.kind}`
  if (line.work.zoneStation[part.index] !== NONE) return `stop "${name}" is of a transfer with a station on it`
  const before = (part.index + line.zones - 1) % line.zones
  return clearsBeforeArrival(line, before) ? null : `stop "${name}" may hold the clear behind a carrier that comes onto its transfer`
}

/** The zone behind a move into a transfer is clear before the carrier stands on it, so that a stop of the transfer finds no clear under way. */
function clearsBeforeArrival(line: Line, path: number): boolean {
  if (line.moves.moveSampler[path] !== NONE || line.moves.clearSampler[path] !== NONE) return false
  const pace = line.moves.pathPace[path]!
  return [0, 1].every((start) => line.moves.paceSeconds[pace + PACE_CLEAR + start]! <= line.moves.paceSeconds[pace + 2 * start]!)
}

/** One closed loop in zone order that takes every carrier, stations with operators of their own, products always there, good and taken off at once. */
function whyNoPlainLoop({
  zones,
  paths,
  stations,
  operators,
  supply,
  inspections,
  rework,
  repairCrews,
  carriers,
}: LineSpec): string | null {
  if (paths.length !== zones.length || carriers.start === 'store') return 'it is not one closed loop'
  if (!paths.every((path, p) => path.from === p && path.to === (p + 1) % zones.length))
    return 'it is not one closed loop in the order of its zones'
  if (!paths.every(takesAll)) return 'carriers are pushed or pulled, or a path takes some of them only'
  if (operators.length > 0) return 'operators are shared by stations'
  if (inspections.length > 0 || rework.length > 0) return 'products are inspected'
  if (repairCrews !== null) return 'repairs wait for a crew'
  if (supply.arrivals.kind !== 'always') return 'products arrive'
  for (const station of stations) {
    const why = whyNoPlainStation(station)
    if (why !== null) return `station ${station.name} ${why}`
  }
  return null
}

function takesAll({ takes, manual }: PathSpec): boolean {
  return manual === null && takes.variants === null && takes.load === null && takes.rejected === null && takes.forStation === null
}

function whyNoPlainStation({ accepts, supply, receiver, safetyStop }: StationSpec): string | null {
  if (accepts === 'rejected') return 'takes off rejected products'
  if (receiver !== null) return 'has a receiver'
  if (safetyStop !== null) return 'has a safety stop'
  return supply !== null && supply.arrivals.kind !== 'always' ? 'has products that arrive' : null
}
