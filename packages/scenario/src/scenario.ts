/** What a scenario file says, complete: the line for the engine, and beside it what only people, plans and pictures need. */
import type { LineSpec } from '@loopwright/line'

/** What a file says, complete: the line for the engine, and what people and pictures need beside it. */
export interface Scenario {
  readonly name: string
  /** heads the pages that answer it */
  readonly question: string
  readonly line: LineSpec
  readonly plan: Plan | null
  /** null where the file gives `warmup` and `length` itself */
  readonly calendar: Calendar | null
  readonly layout: Layout
  readonly titles: Titles
  /** stops as the file names them, in the order of their first source; each source stands in one of them */
  readonly stopEntries: readonly StopEntry[]
  /** variants that people speak of together; a variant may stand in several */
  readonly variantGroups: readonly VariantGroup[]
}

/** What people call tasks and variants, by name; a name that is not here is its own title. */
export interface Titles {
  readonly tasks: Readonly<Record<string, string>>
  readonly variants: Readonly<Record<string, string>>
}

/** A stop of the file, and the breakdown sources that it became. */
export interface StopEntry {
  readonly name: string
  /** the name unless the file says another */
  readonly title: string
  readonly sources: readonly StopSource[]
}

/** One source of stops of the line that an entry of the file became. */
export interface StopSource {
  /** name of the breakdown of the line */
  readonly source: string
  /** name of the station, the zone or the section where it stands */
  readonly place: string
}

/** A variant as written with all its options, or an option with all variants that have it. */
export interface VariantGroup {
  readonly name: string
  readonly title: string
  /** indices of variants of the line */
  readonly variants: readonly number[]
}

/** What shall be made, in units per window. */
export interface Plan {
  /** as the file says it */
  readonly units: number
  /** a length of time is one of the clock, breaks included, as the file says it: `410 in 8 h` */
  readonly per: 'shift' | 'net hour' | 'clock hour' | `${number} ${'s' | 'min' | 'h' | 'd'}`
  /** units wanted within the window */
  readonly unitsPerWindow: number
}

/** The judged stretch of the shift calendar; it is the window of the line. */
export interface Calendar {
  /** such as "second shift" */
  readonly judged: string
  /** shifts within the window, ≥ 1 */
  readonly shifts: number
  /** of one shift, breaks included; seconds */
  readonly grossSeconds: number
  /** of one shift, without breaks; seconds */
  readonly netSeconds: number
  /** net time over plan, seconds; null without a plan */
  readonly taktSeconds: number | null
}

/** For the drawing only: where the travel direction turns, per zone. */
export interface Layout {
  readonly turns: readonly ('left' | 'right' | null)[]
}
