import { notAboveZero } from '../messages.ts'

/** Takt, and what of it a station may be loaded with. */
export interface Takt {
  readonly taktSeconds: number
  /** above 85 % of takt there is no room for scatter (common practice, no source) */
  readonly loadLimitSeconds: number
}

export type StationLoad = 'ok' | 'no room for scatter' | 'over takt'

/**
 * Time in which one unit must leave to meet the demand.
 *
 * @param availableSeconds  net of breaks, above 0
 * @param demand            units in that time, above 0
 * @throws StatisticsError E_DOMAIN
 * @example takt(27000, 640).taktSeconds // => 42.1875
 */
export function takt(availableSeconds: number, demand: number): Takt {
  if (!(availableSeconds > 0 && availableSeconds < Infinity)) throw notAboveZero('The available time', availableSeconds)
  if (!(demand > 0 && demand < Infinity)) throw notAboveZero('The demand', demand)
  const taktSeconds = availableSeconds / demand
  return { taktSeconds, loadLimitSeconds: 0.85 * taktSeconds }
}

/** A station's cycle, work and exchange, against takt. @example stationLoad(40, takt(27000, 640)) // => 'no room for scatter' */
export function stationLoad(cycleSeconds: number, { taktSeconds, loadLimitSeconds }: Takt): StationLoad {
  if (cycleSeconds > taktSeconds) return 'over takt'
  return cycleSeconds > loadLimitSeconds ? 'no room for scatter' : 'ok'
}
