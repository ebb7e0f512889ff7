import { completeLine, type GivenLine, type LineSpec, STORE } from '@loopwright/line'
import { lawOrNull, lineLimits } from '@loopwright/line/bounds'
import { storageZones } from '../change/withCarriers.ts'

/** counts below the lower knee, which show how output rises, and above it, where the best is looked for first */
const BELOW_KNEE = 3
const ABOVE_KNEE = 9

/**
 * The numbers of carriers that are tried by themselves: around the lower knee of the law, or of the limits where there is none, where carriers
 * stop being what limits the line; and the line's own number.
 *
 * @returns  ascending; at least one; up to `mostCarriers`
 * @example defaultCounts(line) // => [1, 2, 3, 4, 5, 6, 7]
 */
export function defaultCounts(given: GivenLine): number[] {
  const spec = completeLine(given)
  const law = lawOrNull(spec)
  const most = mostCarriers(spec)
  const around = countsAround({ carriersLow: law === null ? kneeOfLimits(spec) : law.carriersLow, storageZones: most + 1 })
  const own = spec.carriers.count <= most ? [spec.carriers.count] : []
  return [...new Set([...around, ...own])].sort((a, b) => a - b)
}

/**
 * The most carriers that can move: one fewer than there are zones to wait in; with a store as many as there are zones, since more wait in it.
 *
 * @example mostCarriers(line) // => 7
 */
export function mostCarriers(given: GivenLine): number {
  const spec = completeLine(given)
  const places = storageZones(spec)
  return Math.max(1, spec.paths.some(({ from }) => from === STORE) ? places : places - 1)
}

/** How many carriers it takes that something else limits first; their own number where that is not known. */
function kneeOfLimits(spec: LineSpec): number {
  const limits = lineLimits(spec)
  const carriers = limits.find(({ kind }) => kind === 'carriers')
  const other = limits.find(({ kind }) => kind !== 'carriers' && kind !== 'space')
  if (carriers === undefined || other === undefined) return spec.carriers.count
  return Math.ceil((other.unitsPerWindow / carriers.unitsPerWindow) * spec.carriers.count - 1e-9)
}

/**
 * @param storageZones  zones where a carrier may wait
 * @example countsAround({ carriersLow: 8, storageZones: 12 }) // => [5, 6, 7, 8, 9, 10, 11]
 */
export function countsAround({
  carriersLow,
  storageZones,
}: {
  readonly carriersLow: number | null
  readonly storageZones: number
}): number[] {
  const knee = carriersLow ?? 1
  const most = Math.max(1, storageZones - 1)
  const from = Math.min(most, Math.max(1, knee - BELOW_KNEE))
  const to = Math.min(most, knee + ABOVE_KNEE)
  return Array.from({ length: Math.max(1, to - from + 1) }, (_, index) => from + index)
}
