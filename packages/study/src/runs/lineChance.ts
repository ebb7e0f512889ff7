/** Whether chance reaches a line at all: without it every run is the same, and one is enough. */
import type { LineSpec } from '@loopwright/line'
import { type Distribution, distributionKinds, SamplerTable } from '@loopwright/stats'

/**
 * False where nothing is left to chance: all times constant, the mix not drawn, nothing rejected by chance, no stop by chance. A line may have chance that never
 * reaches its output; the other way round cannot be.
 */
export function lineHasChance(spec: LineSpec): boolean {
  const { mix } = spec
  if (mix.kind === 'random' && mix.shares.filter((share) => share > 0).length > 1) return true
  if (spec.inspections.some(({ rejectProbability }) => isOpen(rejectProbability))) return true
  if (spec.stations.some(({ safetyStop }) => safetyStop !== null && isOpen(safetyStop.probability))) return true
  return holdsDraw(spec)
}

/** A chance that may fall either way. */
export const isOpen = (probability: number): boolean => probability > 0 && probability < 1

const KINDS: ReadonlySet<unknown> = new Set(distributionKinds().map(({ kind }) => kind))
const isDistribution = (part: object): part is Distribution => 'kind' in part && KINDS.has(part.kind)

/** Whether a part of the line holds a distribution that draws, however deep. A replay gives the same values in the same order in every world. */
function holdsDraw(part: unknown): boolean {
  if (typeof part !== 'object' || part === null) return false
  return isDistribution(part) ? new SamplerTable([part]).uses(0) === 'uniform' : Object.values(part).some(holdsDraw)
}
