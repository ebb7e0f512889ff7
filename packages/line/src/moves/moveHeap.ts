/**
 * Places whose carrier may be able to start, on a plain loop: the longest waiting first, then the lower place, which is the lower path. A binary heap in the
 * columns of the move list; a place that is not at rest or looking is not taken in, since it is told again when it is. (MODEL.md §1, §3)
 */
import type { Line } from '../state/line.ts'
import { addTo, NONE } from '../state/lists.ts'
import { DONE, LOOKING } from '../state/moves.ts'

/** Somebody at this place may be able to start now. */
export function wake(line: Line, place: number): void {
  const { moves } = line
  if (!line.graph.isLoop) {
    addTo(moves.moveList, place)
    return
  }
  const carrier = moves.zoneCarrier[place]!
  if (carrier === NONE) return
  const phase = moves.carrierPhase[carrier]!
  if (phase !== DONE && phase !== LOOKING) return
  const { moveList, moveSince, moveAt } = moves
  if (moveList.isIn[place] === 0) {
    moveList.isIn[place] = 1
    moveAt[place] = moveList.length
    moveList.items[moveList.length++] = place
  }
  moveSince[place] = moves.carrierSince[carrier]!
  climb(line, moveAt[place]!)
  sink(line, moveAt[place]!)
}

/** Takes out the first place; the list is not empty. */
export function takeFirst(line: Line): number {
  const { moveList, moveAt } = line.moves
  const { items } = moveList
  const first = items[0]!
  moveList.isIn[first] = 0
  const last = items[--moveList.length]!
  if (moveList.length > 0) {
    items[0] = last
    moveAt[last] = 0
    sink(line, 0)
  }
  return first
}

function goesBefore(line: Line, a: number, b: number): boolean {
  const { moveSince } = line.moves
  return moveSince[a]! < moveSince[b]! || (moveSince[a] === moveSince[b] && a < b)
}

function climb(line: Line, from: number): void {
  const { moveAt } = line.moves
  const { items } = line.moves.moveList
  let at = from
  while (at > 0) {
    const up = (at - 1) >> 1
    const child = items[at]!
    const parent = items[up]!
    if (!goesBefore(line, child, parent)) return
    items[at] = parent
    items[up] = child
    moveAt[parent] = at
    moveAt[child] = up
    at = up
  }
}

function sink(line: Line, from: number): void {
  const { moveAt } = line.moves
  const { items, length } = line.moves.moveList
  let at = from
  for (;;) {
    let down = 2 * at + 1
    if (down >= length) return
    if (down + 1 < length && goesBefore(line, items[down + 1]!, items[down]!)) down++
    const parent = items[at]!
    const child = items[down]!
    if (!goesBefore(line, child, parent)) return
    items[at] = child
    items[down] = parent
    moveAt[child] = at
    moveAt[parent] = down
    at = down
  }
}
