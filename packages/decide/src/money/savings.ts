/** What one way to build a line costs a year more or less than another: labour, overtime, running cost. */

/** What an hour and a year cost. */
export interface Rates {
  /** money per person and hour, ≥ 0 */
  readonly wage: number
  /** an hour of overtime costs so many times the wage, ≥ 0 */
  readonly overtimeFactor: number
  readonly daysPerYear: number
  readonly shiftsPerDay: number
  /** paid to each person for a shift without overtime, > 0 */
  readonly paidHours: number
}

/** What a line takes of people, time and money. */
export interface Use {
  /** persons on a shift, > 0 */
  readonly crew: number
  /** mean minutes of overtime a shift, ≥ 0 */
  readonly overtimeMinutes: number
  /** energy, upkeep and the like, money a year */
  readonly runningCost: number
}

/** What is saved a year; a part below 0 costs more. */
export interface Savings {
  /** minutes of overtime, of all shifts of a day */
  readonly minutesPerDay: number
  /** hours of all persons in these minutes */
  readonly labourHoursPerDay: number
  /** money a year */
  readonly overtime: number
  readonly labour: number
  readonly runningCost: number
  /** the sum */
  readonly annual: number
}

/**
 * What is saved a year by one line against another.
 *
 * @param worked  minutes of overtime a shift that are really worked today; no more than these can be saved. Default: no limit
 * @see common practice, no source: `saved min/60 · crew · wage · overtime factor · days − extra running cost`
 * @example annualSavings({ crew: 8, overtimeMinutes: 34.1, runningCost: 0 }, { crew: 8, overtimeMinutes: 0.6, runningCost: 12_000 }, { wage: 38, overtimeFactor: 1.5, daysPerYear: 230, shiftsPerDay: 2, paidHours: 7.5 }).minutesPerDay // => 67
 */
export function annualSavings(today: Use, then: Use, rates: Rates, worked: number = Number.POSITIVE_INFINITY): Savings {
  const { wage, overtimeFactor, daysPerYear, shiftsPerDay, paidHours } = rates
  const hours = (use: Use, minutes: number): number => (minutes / 60) * use.crew * shiftsPerDay
  const after = Math.max(then.overtimeMinutes, today.overtimeMinutes - worked)
  const minutesPerDay = (today.overtimeMinutes - after) * shiftsPerDay
  const labourHoursPerDay = hours(today, today.overtimeMinutes) - hours(then, after)
  const overtime = labourHoursPerDay * wage * overtimeFactor * daysPerYear
  const labour = (today.crew - then.crew) * paidHours * shiftsPerDay * wage * daysPerYear
  const runningCost = today.runningCost - then.runningCost
  return { minutesPerDay, labourHoursPerDay, overtime, labour, runningCost, annual: overtime + labour + runningCost }
}
