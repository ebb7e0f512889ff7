/** What a run's time comes to, with a calendar and without. */
import type { BreakSpec, WindowSpec } from '@loopwright/line'
import type { ShiftStart } from '../../problems/notes.ts'
import type { Calendar } from '../../scenario.ts'

export interface Time {
  readonly window: WindowSpec
  readonly breaks: readonly BreakSpec[]
  readonly conveyorDuringBreaks: boolean
  /** takt still open */
  readonly calendar: Calendar | null
  /** of the whole window, without breaks */
  readonly netSeconds: number
  /** of all shifts; empty without a calendar */
  readonly shiftStarts: readonly ShiftStart[]
  /** of every day; 1 without a calendar */
  readonly shiftsPerDay: number
}
