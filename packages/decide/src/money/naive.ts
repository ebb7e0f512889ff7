/** The calculation on the back of an envelope: seconds saved × units. It holds only where the seconds are saved at the constraint, and where all of them become output. */

/** Seconds saved a unit, and what they come to. */
export interface NaiveSaving {
  /** a unit; below 0: it takes longer */
  readonly secondsPerUnit: number
  /** of all shifts of a day */
  readonly minutesPerDay: number
}

/**
 * Minutes a day by seconds × units.
 *
 * @param secondsPerUnit  saved at one place
 * @param unitsPerShift   made there, ≥ 0
 * @see common practice, no source: 4 s a unit × 800 units are about 53 min a shift, which holds only at the constraint
 * @example naiveSaving(4, 800, 1).minutesPerDay // => 53.333333333333336
 */
export function naiveSaving(secondsPerUnit: number, unitsPerShift: number, shiftsPerDay: number): NaiveSaving {
  return { secondsPerUnit, minutesPerDay: (secondsPerUnit * unitsPerShift * shiftsPerDay) / 60 }
}
