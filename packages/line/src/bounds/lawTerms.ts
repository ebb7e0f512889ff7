/** The law's three terms for one number of carriers. (MODEL.md §12) */
import type { Law } from './law.ts'

/** The three terms of the law at one number of carriers; carriers per second. */
export interface LawTerms {
  /** N over the lap of one carrier */
  readonly carrierLimited: number
  /** one over the slowest exchange; Infinity is never given: null where there is no such limit */
  readonly stationLimited: number | null
  /** holes over the lap of one hole; null where clear times are 0 */
  readonly spaceLimited: number | null
  /** the least of the three */
  readonly rate: number
  readonly regime: 'carrier-limited' | 'station-limited' | 'space-limited'
  /** true: holds exactly (constant times, no ramps); false: an estimate */
  readonly exact: boolean
}

/**
 * Rates in carriers per second: too few carriers, the slowest exchange, too few holes; the least of them holds.
 *
 * Where terms are equal the regime is the flat one, station-limited, before the others: a knee belongs to the flat stretch.
 *
 * @param law       of the line, from `law(spec)`
 * @param carriers  count, a whole number ≥ 1
 * @throws RangeError  if carriers is no whole number ≥ 1
 * @see Baccelli, Cohen, Olsder & Quadrat, Synchronization and Linearity (1992): maximum cycle ratio
 * @example lawTerms({ lapSeconds: 32, exchangeSeconds: 11, holeLapSeconds: 20, storageZones: 10, exact: true }, 2).rate // => 0.0625
 */
export function lawTerms(
  law: Pick<Law, 'lapSeconds' | 'exchangeSeconds' | 'holeLapSeconds' | 'storageZones' | 'exact'>,
  carriers: number,
): LawTerms {
  if (!Number.isInteger(carriers) || carriers < 1) throw new RangeError(`carriers must be a whole number of at least 1, not ${carriers}`)
  const carrierLimited = carriers / law.lapSeconds
  const stationLimited = law.exchangeSeconds > 0 ? 1 / law.exchangeSeconds : null
  const holes = Math.max(0, law.storageZones - carriers)
  const spaceLimited = holes === 0 ? 0 : law.holeLapSeconds > 0 ? holes / law.holeLapSeconds : null
  const rate = Math.min(carrierLimited, stationLimited ?? Infinity, spaceLimited ?? Infinity)
  const regime = rate === stationLimited ? 'station-limited' : rate === carrierLimited ? 'carrier-limited' : 'space-limited'
  return { carrierLimited, stationLimited, spaceLimited, rate, regime, exact: law.exact }
}
