/** What a scenario file says, complete: the line for the engine, and beside it what only people, plans and pictures need. */
import type { LineSpec } from '@loopwright/line'

export interface Scenario {
  readonly name: string
  /** heads every page */
  readonly question: string
  readonly line: LineSpec
  readonly plan: Plan | null
  /** null where the file gives `warmup` and `length` itself */
  readonly calendar: Calendar | null
  readonly layout: Layout
}

export interface Plan {
  /** as the file says it */
  readonly units: number
  readonly per: 'shift' | 'net hour' | 'clock hour'
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
