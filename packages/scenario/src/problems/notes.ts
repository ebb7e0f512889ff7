/** What the reader made of a file, beyond the line itself: for people who check whether they were understood. */
import type { BreakSpec } from '@loopwright/line'

/** What was understood of a variant. */
export interface VariantNote {
  readonly name: string
  /** the variant as written */
  readonly variant: string
  readonly options: readonly string[]
  /** 0 … 1; how often it is made in the long run */
  readonly share: number
}

/** What was understood of a station. */
export interface StationNote {
  readonly name: string
  readonly title: string
  readonly zone: string
  /** seconds per stay, mean over the mix, release not included */
  readonly meanWorkSeconds: number
  readonly meanReleaseSeconds: number
}

/** A shift of the run, as the calendar places it. Time between shifts is no part of the run. */
export interface ShiftStart {
  /** on the clock of the run, seconds from time 0 */
  readonly seconds: number
  /** on the clock of the day, seconds from midnight, 0 … 172 800: a shift after midnight may count on */
  readonly clockSeconds: number
}

/** A chance per cycle and the time to failure it became. */
export interface ShortStop {
  readonly name: string
  readonly station: string
  readonly chancePerCycle: number
  readonly meanWorkSeconds: number
  readonly meanTimeToFailureSeconds: number
}

/** A column of times that was read from a file. */
export interface TableNote {
  /** where the scenario takes it */
  readonly path: string
  readonly file: string
  readonly column: string
  /** rows of the file, without its header */
  readonly rows: number
  /** rows whose time is used */
  readonly taken: number
  /** rows that "where" leaves out */
  readonly others: number
  /** rows without a time */
  readonly empty: number
  /** columns that look like a key (station, task), and whose values are taken together */
  readonly pooled: readonly string[]
}

/** What was understood of a file, for people: made names, derived times, breaks. */
export interface ScenarioNotes {
  /** in travel order */
  readonly zoneNames: readonly string[]
  /** those whose names the file does not give */
  readonly generatedZoneNames: readonly string[]
  /** zones that hold no waiting carrier: transfers entered only if their exit is clear */
  readonly transferZoneNames: readonly string[]
  readonly storageZones: number
  readonly options: readonly string[]
  /** in the order of the draws */
  readonly variants: readonly VariantNote[]
  readonly stations: readonly StationNote[]
  /** chances per cycle and the times to failure they became */
  readonly shortStops: readonly ShortStop[]
  /** all of the run, in seconds from time 0 */
  readonly breaks: readonly BreakSpec[]
  readonly warmupSeconds: number
  readonly windowSeconds: number
  /** of the window, without breaks */
  readonly netSeconds: number
  /** in order; empty without a calendar */
  readonly shiftStarts: readonly ShiftStart[]
  /** shifts of every day; 1 without a calendar */
  readonly shiftsPerDay: number
  /** net time over plan; null without a plan */
  readonly taktSeconds: number | null
  readonly variations: readonly string[]
  /** in the order in which the file takes them */
  readonly tables: readonly TableNote[]
}
