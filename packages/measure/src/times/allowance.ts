/** Rating and allowance, as in work measurement: normal time = observed × rating; the allowance comes on top, and breaks are counted once. */

/** An allowance, and where the breaks are counted. */
export interface Allowance {
  /** 0.12: 12 % */
  readonly share: number
  /** what the share is of: the work itself, `normal × (1 + A)`, or the shift, `normal / (1 − A)` */
  readonly of: 'work' | 'shift'
  /** `calendar`: the scenario's calendar has the breaks, and the allowance has none in it; `allowance`: the allowance has them, and the calendar must have none */
  readonly breaks: 'calendar' | 'allowance'
}

/**
 * Standard time.
 *
 * @param rating     1: standard pace
 * @param allowance  null: none
 * @see work-study texts: normal × (1 + A) where the allowance is on work time, normal/(1 − A) where it is on shift time
 * @example standardTime(50, 1.1, { share: 0.1, of: 'work', breaks: 'calendar' }) // => 60.50000000000001
 */
export function standardTime(observed: number, rating: number, allowance: Allowance | null): number {
  const normal = observed * rating
  if (allowance === null) return normal
  return allowance.of === 'work' ? normal * (1 + allowance.share) : normal / (1 - allowance.share)
}
