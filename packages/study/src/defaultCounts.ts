import type { Law } from '@loopwright/line'

/** counts below the lower knee, which show how output rises, and above it, where the best is looked for first */
const BELOW_KNEE = 3
const ABOVE_KNEE = 9

/**
 * The numbers of carriers that are tried by themselves: around the law's lower knee, where its carriers stop being what limits the loop.
 *
 * @returns  ascending; at least one; up to one less than there are zones to wait in
 * @example defaultCounts({ carriersLow: 8, storageZones: 12 }) // => [5, 6, 7, 8, 9, 10, 11]
 */
export function defaultCounts(law: Pick<Law, 'carriersLow' | 'storageZones'>): number[] {
  const knee = law.carriersLow ?? 1
  const most = Math.max(1, law.storageZones - 1)
  const from = Math.min(most, Math.max(1, knee - BELOW_KNEE))
  const to = Math.min(most, knee + ABOVE_KNEE)
  return Array.from({ length: Math.max(1, to - from + 1) }, (_, index) => from + index)
}
