/** The products of a line on their ways: what each unit of output needs of anything, at the least. */
import type { LineSpec } from '../spec.ts'
import { mixShares } from './law.ts'
import { type LeastUse, leastUse, type Use, useOnWays } from './leastUse.ts'
import { productWalk, type WalkGraph } from './productWalk.ts'

export interface Flow {
  readonly share: number
  readonly graph: WalkGraph
}

export interface Flows {
  readonly flows: readonly Flow[]
  /** of the products loaded, those taken off good, at the most; > 0 */
  readonly goodShare: number
}

/** Least use per unit of output, and the ways on which it is so little, by variant. */
export interface UnitUse {
  readonly perUnit: number
  readonly ways: readonly LeastUse[]
}

/** @returns  null where nothing good is ever taken off, or there is more to it than can be looked at */
export function flowsOf(spec: LineSpec): Flows | null {
  const flows: Flow[] = []
  for (const [variant, share] of mixShares(spec.mix, spec.variants.length).entries()) {
    if (!(share > 0)) continue
    const graph = productWalk(spec, variant)
    if (graph === null) return null
    flows.push({ share, graph })
  }
  let notGood = 0
  for (const { share, graph } of flows) notGood += share * (leastUse(graph, { end: (_, good) => (good ? 0 : 1), lost: 1 })?.perLoad ?? 1)
  const goodShare = 1 - notGood
  return goodShare > 1e-9 ? { flows, goodShare } : null
}

/** Least mean use per unit of output: a variant that is never taken off needs nothing. */
export function unitUse({ flows, goodShare }: Flows, use: Use): UnitUse {
  const ways = flows.map(({ graph }) => leastUse(graph, use) ?? { perLoad: 0, start: -1, ways: [] })
  return { perUnit: flows.reduce((sum, { share }, index) => sum + share * ways[index]!.perLoad, 0) / goodShare, ways }
}

/** What else is needed per unit on the ways found for another use. */
export function otherUse({ flows, goodShare }: Flows, use: Use, { ways }: Pick<UnitUse, 'ways'>): number {
  const perLoad = flows.map(({ graph }, index) => (ways[index]!.start < 0 ? 0 : useOnWays(graph, use, ways[index]!)))
  return flows.reduce((sum, { share }, index) => sum + share * perLoad[index]!, 0) / goodShare
}
