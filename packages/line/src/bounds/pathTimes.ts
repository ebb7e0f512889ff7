/** Mean move and clear times of each path, given or derived. (MODEL.md §3) */
import { derivedTimes } from '../moves/motion.ts'
import type { LineSpec } from '../spec.ts'
import { meanSeconds } from './meanSeconds.ts'

export interface PathTimes {
  /** seconds, at 2·start + end, each REST or SPEED; a given move takes the same from either start */
  readonly move: readonly number[]
  /** seconds, at REST and SPEED, without the change back */
  readonly clear: readonly number[]
  /** the move time is given: it ends at rest, and the next move starts from rest */
  readonly given: boolean
}

export function pathTimes(spec: LineSpec): PathTimes[] {
  const derived = derivedTimes(spec)
  return spec.paths.map((path, index) => {
    const move = path.moveSeconds
    const moves = move === null ? [...derived.move.subarray(4 * index, 4 * index + 4)] : new Array<number>(4).fill(meanSeconds(move))
    const clear = path.clearSeconds
    const clears =
      clear === null
        ? [...derived.clear.subarray(2 * index, 2 * index + 2)]
        : new Array<number>(2).fill(clear === 'move' ? moves[0]! : meanSeconds(clear))
    return { move: moves, clear: clears, given: move !== null }
  })
}
