import type { LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'

/** counts below the lower knee, which show how output rises, and above it, where the best is looked for first */
const BELOW_KNEE = 3
const ABOVE_KNEE = 9

/**
 * The numbers of carriers that are tried by themselves: around the law's lower knee, where its carriers stop being what limits the loop;
 * around the line's own number where it has no law.
 *
 * @returns  ascending; at least one; up to one less than there are zones to wait in
 * @example defaultCounts(line) // => [1, 2, 3, 4, 5, 6, 7]
 */
export function defaultCounts(spec: LineSpec): number[] {
  const law = lawOrNull(spec)
  const storageZones = spec.zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear !== true).length
  return countsAround({ carriersLow: law === null ? spec.carriers.count : law.carriersLow, storageZones })
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
