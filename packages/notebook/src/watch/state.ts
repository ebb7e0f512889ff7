/** What the window of a notebook that is being written is told: plain data, sent with each change. */
import type { PartState } from './parts.ts'

export interface WatchState {
  /** grows with each change of the page */
  readonly version: number
  /** a run is going on */
  readonly running: boolean
  /** one line: what is being done, or how the last run ended */
  readonly note: string
  /** why nothing could be run; null: it could */
  readonly fault: string | null
  /** the part that runs has run from then on, ISO 8601; null: none does */
  readonly since: string | null
  readonly parts: readonly {
    readonly state: PartState
    /** such as "line 12" */
    readonly place: string
    /** of its cells on the page */
    readonly ids: readonly string[]
  }[]
}
