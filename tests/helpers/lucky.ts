/** Means over worlds, for tests of luck. */
import { Tally } from '@loopwright/stats'
import { World } from '../../packages/study/src/controls/series.ts'

/** Over so many worlds of one seed. */
export function meanOf(worlds: number, of: (world: World) => number): { readonly mean: number; readonly standardError: number } {
  const tally = Tally.of(Array.from({ length: worlds }, (_, replication) => of(new World('luck', replication))))
  return { mean: tally.mean!, standardError: tally.sd! / Math.sqrt(worlds) }
}
