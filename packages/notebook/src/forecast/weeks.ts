/** Weeks: the output of so many simulated shifts, added up. */
import { counted } from '../words/countedWords.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import type { Period } from '../sweep/period.ts'

/**
 * Disjoint groups of shifts, in their order, each added up; those left over are not used.
 *
 * @param units          output of each simulated shift
 * @param shiftsPerWeek  a whole number ≥ 1
 * @example weeksOf([1, 2, 3, 4, 5], 2) // => [3, 7]
 */
export function weeksOf(units: readonly number[], shiftsPerWeek: number): number[] {
  return Array.from({ length: Math.floor(units.length / shiftsPerWeek) }, (_, week) =>
    units.slice(week * shiftsPerWeek, (week + 1) * shiftsPerWeek).reduce((sum, made) => sum + made, 0),
  )
}

/** working days of a week where nothing else is said; common practice, no source */
const DAYS = 5

/**
 * Shifts of a day on five days; 1, which is no week, without a calendar.
 *
 * @example usualShiftsPerWeek({ shiftStarts: [{ seconds: 0, clockSeconds: 21_600 }], shiftsPerDay: 2 }) // => 10
 */
export function usualShiftsPerWeek(notes: StoryOptions['notes']): number {
  return notes === undefined || notes.shiftStarts.length === 0 ? 1 : DAYS * notes.shiftsPerDay
}

/** "a week of 10 shifts"; without a calendar there are no weeks: "5 windows in a row" */
export const weekWords = (count: number, { one, many }: Pick<Period, 'one' | 'many'>): string =>
  one === 'shift' ? `a week of ${counted(count, one)}` : `${counted(count, one, many)} in a row`
