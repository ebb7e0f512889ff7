/** Whether chance reaches a line at all: without it every run is the same, and one is enough. */
import type { LineSpec } from '@loopwright/line'
import type { DistributionKind } from '@loopwright/stats'

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

const isOpen = (probability: number): boolean => probability > 0 && probability < 1

/** Whether values differ by chance; `limited` has what it limits. A replay gives the same values in the same order in every world. */
const DRAWS: Readonly<Record<DistributionKind, boolean>> = {
  constant: false,
  uniform: true,
  triangular: true,
  exponential: true,
  lognormal: true,
  gamma: true,
  weibull: true,
  pert: true,
  empirical: true,
  discrete: true,
  replay: false,
  occasional: true,
  limited: false,
}

/** Whether a part of the line holds a distribution that draws, however deep. */
function holdsDraw(part: unknown): boolean {
  if (typeof part !== 'object' || part === null) return false
  const kind = (part as { readonly kind?: unknown }).kind
  return (typeof kind === 'string' && DRAWS[kind as DistributionKind] === true) || Object.values(part).some(holdsDraw)
}
