/** Pace and use of a line, in the terms of the trade and of ISO 22400. */

/**
 * Takt: net time over demand.
 *
 * @see common practice, no source
 * @example takt(27_000, 320) // => 84.375
 */
export const takt = (netSeconds: number, demand: number): number => netSeconds / demand

/**
 * Line efficiency: good units over what the designed cycle would make in the net time.
 *
 * @example lineEfficiency(333, 27_000, 75.375) // => 0.929625
 */
export const lineEfficiency = (goodUnits: number, netSeconds: number, cycleSeconds: number): number =>
  goodUnits / (netSeconds / cycleSeconds)

/**
 * Balance loss: the share of all stations’ time that the slowest one leaves without work, `1 − Σ work/(stations · C_b)`.
 *
 * @param workSeconds   mean work of each station
 * @param cycleSeconds  of the slowest exchange
 * @example balanceLoss([40, 50], 50) // => 0.1
 */
export const balanceLoss = (workSeconds: readonly number[], cycleSeconds: number): number =>
  1 - workSeconds.reduce((sum, seconds) => sum + seconds, 0) / (workSeconds.length * cycleSeconds)

/** Times of a work unit in one shift, in the terms of ISO 22400; seconds. */
export interface UnitTimes {
  /** APT: producing */
  readonly production: number
  /** ADET: held up by others */
  readonly delay: number
  /** ADOT: down */
  readonly down: number
}

/** Figures of ISO 22400, 0 … 1; effectiveness may pass 1 where work is quicker than planned. */
export interface Effectiveness {
  /** PBT: planned to be busy, breaks outside */
  readonly plannedBusy: number
  readonly availability: number
  readonly effectiveness: number
  readonly quality: number
  readonly oee: number
}

/**
 * Overall equipment effectiveness: availability = APT/PBT, effectiveness = PRI · PQ/APT, quality = GQ/PQ.
 *
 * @param planned  PRI, planned seconds an item
 * @param made     PQ, items
 * @param good     GQ, good items
 * @see ISO 22400-2:2014, as cited in a companion specification for machine tools
 * @example overallEffectiveness({ production: 24_000, delay: 3000, down: 1800 }, 120, 180, 171).oee // => 0.7125
 */
export function overallEffectiveness({ production, delay, down }: UnitTimes, planned: number, made: number, good: number): Effectiveness {
  const plannedBusy = production + delay + down
  const availability = plannedBusy === 0 ? 0 : production / plannedBusy
  const effectiveness = production === 0 ? 0 : (planned * made) / production
  const quality = made === 0 ? 0 : good / made
  return { plannedBusy, availability, effectiveness, quality, oee: availability * effectiveness * quality }
}

/** How the states told here become the times of ISO 22400; printed with every figure. */
export const STATE_TIMES: readonly { readonly states: string; readonly element: string }[] = [
  { states: 'working, handling', element: 'APT, actual production time' },
  {
    states: 'exchanging, starved, blocked, waiting for operator, product or receiver',
    element: 'ADET, actual unit delay time, told with its reason',
  },
  { states: 'stopped, short stops too', element: 'ADOT, actual unit down time' },
  { states: 'break, not planned', element: 'outside of PBT, planned busy time' },
]
