/** Right of way: which of the moves that could start now is the first. (MODEL.md §1, §3) */
import { type Line, NONE } from '../instant/state.ts'

/** Longest waiting, then lower path index. */
function isEarlier(line: Line, path: number, other: number): boolean {
  const since = line.carrierSince[line.zoneCarrier[line.pathFrom[path]!]!]!
  const otherSince = line.carrierSince[line.zoneCarrier[line.pathFrom[other]!]!]!
  return since < otherSince || (since === otherSince && path < other)
}

/** Whether the merge of the zone that both lead to lets `path` go before `other`. */
function goesBefore(line: Line, path: number, other: number): boolean {
  const to = line.pathTo[path]!
  if (line.mergeAlternates[to] === 1) {
    const last = line.zoneLastIn[to]!
    if ((path === last) !== (other === last)) return other === last
  }
  const rank = line.mergeRank[path]! - line.mergeRank[other]!
  return rank === 0 ? isEarlier(line, path, other) : rank < 0
}

/** The place in the move list of the first move, by the general order, among those that have the right of way into their zone; all in the list can start along `startPath`. */
export function firstWithRightOfWay(line: Line): number {
  const { items, length } = line.moveList
  let best = NONE
  let bestPlace = NONE
  for (let place = 0; place < length; place++) {
    const path = line.startPath[items[place]!]!
    const to = line.pathTo[path]!
    let gives = false
    for (let rival = 0; rival < length && !gives; rival++) {
      const other = line.startPath[items[rival]!]!
      gives = other !== path && to !== line.store && line.pathTo[other] === to && goesBefore(line, other, path)
    }
    if (gives || (best !== NONE && !isEarlier(line, path, best))) continue
    best = path
    bestPlace = place
  }
  return bestPlace
}
