/** Right of way: which of the moves that could start now is the first. (MODEL.md §1, §3) */
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'

/** Longest waiting, then lower path index. */
function isEarlier(line: Line, path: number, other: number): boolean {
  const { moves, graph } = line
  const since = moves.carrierSince[moves.zoneCarrier[graph.pathFrom[path]!]!]!
  const otherSince = moves.carrierSince[moves.zoneCarrier[graph.pathFrom[other]!]!]!
  return since < otherSince || (since === otherSince && path < other)
}

/** Whether the merge of the zone that both lead to lets `path` go before `other`. */
export function goesBefore(line: Line, path: number, other: number): boolean {
  const { graph } = line
  const to = graph.pathTo[path]!
  if (graph.mergeAlternates[to] === 1) {
    const last = line.moves.zoneLastIn[to]!
    if ((path === last) !== (other === last)) return other === last
  }
  const rank = graph.mergeRank[path]! - graph.mergeRank[other]!
  return rank === 0 ? isEarlier(line, path, other) : rank < 0
}

/** The place in the move list of the first move, by the general order, among those that have the right of way into their zone; all in the list can start along `startPath`. */
export function firstWithRightOfWay(line: Line): number {
  const { moves, graph } = line
  const { items, length } = moves.moveList
  let best = NONE
  let bestPlace = NONE
  for (let place = 0; place < length; place++) {
    const path = moves.startPath[items[place]!]!
    const to = graph.pathTo[path]!
    let gives = false
    for (let rival = 0; rival < length && !gives; rival++) {
      const other = moves.startPath[items[rival]!]!
      gives = other !== path && to !== line.store && graph.pathTo[other] === to && goesBefore(line, other, path)
    }
    if (gives || (best !== NONE && !isEarlier(line, path, best))) continue
    best = path
    bestPlace = place
  }
  return bestPlace
}
