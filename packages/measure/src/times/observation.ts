/** A measured time, with what the table says of it. */
import type { Account } from '../table/account.ts'

/** One observation of one task. */
export interface Observation {
  readonly task: string
  /** null: the table tells no variants */
  readonly variant: string | null
  readonly operator: string | null
  /** as measured, before rating and allowance */
  readonly observedSeconds: number
  /** 1: standard pace; null: not rated */
  readonly rating: number | null
  /** seconds of the wall clock, for the order; null: the order of rows */
  readonly when: number | null
  readonly line: number
  /** such as `line 7, column 3 ("seconds")` */
  readonly place: string
}

/** A table of times, understood. */
export interface TimeTable {
  readonly file: string
  /** `long`: a row for each time; `cycles`: a row for each cycle, a column for each task; `tasks`: a row for each task, a column for each cycle */
  readonly form: 'long' | 'cycles' | 'tasks'
  readonly observations: readonly Observation[]
  readonly account: Account
  /** what was understood: columns, units, decimals; in sentences */
  readonly said: readonly string[]
  /** what was guessed or looks odd, and may make numbers wrong; in sentences */
  readonly doubts: readonly string[]
  /** the column of a long CSV table that a scenario may refer to; null: it may not */
  readonly column: TimeColumn | null
}

/** What a scenario needs to take the values from the table itself. */
export interface TimeColumn {
  readonly time: string
  readonly task: string
  readonly variant: string | null
  readonly unit: 's' | 'min' | 'h' | 'ms'
}
