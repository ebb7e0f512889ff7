import type { Law } from '@loopwright/study'

/** counts below the lower knee that show how output rises */
const BELOW_KNEE = 3

/**
 * The numbers of carriers that a sweep tries by itself: from 3 below the law's lower knee to one less than there are zones to wait in.
 *
 * @returns  ascending; at least one
 */
export function defaultCounts(law: Pick<Law, 'carriersLow' | 'storageZones'>): number[] {
  const to = Math.max(1, law.storageZones - 1)
  const from = Math.min(to, Math.max(1, (law.carriersLow ?? 1) - BELOW_KNEE))
  return Array.from({ length: to - from + 1 }, (_, index) => from + index)
}
