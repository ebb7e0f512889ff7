/** The way out of a zone: whom a path takes, which path is the carrier's, and which it could start along now. (MODEL.md §3) */
import { hasDutyLeft } from './dutyAhead.ts'
import { ALTERNATE, FIRST_FREE } from '../state/graph.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { FREE, isClearOver } from '../state/moves.ts'

/** What of the paths out of a zone is left for a carrier: nothing, those without conditions, those whose conditions hold, or of these those for rejects. */
const NO_PATH = 0
const OPEN_PATH = 1
const CHOSEN_PATH = 2
/** those for rejected products, which go before all others */
const REJECTS_PATH = 3

/** Whether all conditions of the path hold for the carrier. */
function takes(line: Line, path: number, carrier: number): boolean {
  const { goods } = line
  if (line.graph.pathIsChosen[path] === 0) return true
  const wanted = line.spec.paths[path]!.takes
  const isLoaded = goods.carrierSerial[carrier] !== NONE
  if (wanted.load !== null && (wanted.load === 'loaded') !== isLoaded) return false
  if (wanted.variants !== null && !(isLoaded && wanted.variants.includes(goods.carrierVariant[carrier]!))) return false
  if (wanted.rejected !== null && wanted.rejected !== (isLoaded && goods.carrierRejected[carrier] === 1)) return false
  return wanted.forStation === null || hasDutyLeft(line, wanted.forStation, carrier)
}

/** Paths with conditions that hold go before those without. */
function kindLeft(line: Line, zone: number, carrier: number): number {
  const { graph } = line
  const { first, items } = graph.outs
  let kind = NO_PATH
  for (let k = first[zone]!; k < first[zone + 1]!; k++) {
    const path = items[k]!
    if (graph.pathIsChosen[path] === 0) kind = Math.max(kind, OPEN_PATH)
    else if (takes(line, path, carrier)) {
      if (line.spec.paths[path]!.takes.rejected === true) return REJECTS_PATH
      kind = CHOSEN_PATH
    }
  }
  return kind
}

function isLeft(line: Line, path: number, carrier: number, kind: number): boolean {
  if (line.graph.pathIsChosen[path] === 0) return kind === OPEN_PATH
  if (kind === REJECTS_PATH && line.spec.paths[path]!.takes.rejected !== true) return false
  return kind !== OPEN_PATH && takes(line, path, carrier)
}

/** The way out, free or not: fixed before, or by the divert now (`free`: the lowest path whose zone is free, else the lowest). NONE: it has none. */
export function wayNow(line: Line, zone: number, carrier: number): number {
  const fixed = line.moves.zoneWay[zone]!
  return fixed !== NONE ? fixed : wayOf(line, zone, carrier)
}

/** The same without what is fixed for the carrier that is in the zone. */
export function wayOf(line: Line, zone: number, carrier: number): number {
  const { graph, moves } = line
  const only = graph.onlyOut[zone]!
  if (only !== NONE) return only
  const kind = kindLeft(line, zone, carrier)
  if (kind === NO_PATH) return NONE
  const { first, items } = graph.outs
  const divert = graph.divert[zone]!
  let turn = divert === ALTERNATE ? moves.zoneStarts[zone]! % countLeft(line, zone, carrier, kind) : 0
  let lowest = NONE
  for (let k = first[zone]!; k < first[zone + 1]!; k++) {
    const path = items[k]!
    if (!isLeft(line, path, carrier, kind) || turn-- > 0) continue
    if (divert !== FIRST_FREE) return path
    const to = graph.pathTo[path]!
    if (moves.zoneState[to] === FREE || isClearOver(line, to)) return path
    if (lowest === NONE) lowest = path
  }
  return lowest
}

function countLeft(line: Line, zone: number, carrier: number, kind: number): number {
  const { first, items } = line.graph.outs
  let count = 0
  for (let k = first[zone]!; k < first[zone + 1]!; k++) if (isLeft(line, items[k]!, carrier, kind)) count++
  return count
}

/** The lowest path left for the carrier that `can` start: for a divert to the first that can. */
export function firstWay(
  line: Line,
  zone: number,
  carrier: number,
  can: (line: Line, path: number, carrier: number, asIfNoStop: boolean) => boolean,
  asIfNoStop: boolean,
): number {
  const kind = kindLeft(line, zone, carrier)
  if (kind === NO_PATH) return NONE
  const { first, items } = line.graph.outs
  for (let k = first[zone]!; k < first[zone + 1]!; k++) {
    const path = items[k]!
    if (isLeft(line, path, carrier, kind) && can(line, path, carrier, asIfNoStop)) return path
  }
  return NONE
}
