/** A picture with all that goes with it, as a cell holds it. */
import type { ChartRow, PlanZone, Table } from '@loopwright/charts'

export interface Figure {
  /** what the picture shows of these very data, one or two sentences: the caption */
  readonly finding: string
  readonly picture: Picture
  /** what the picture shows, for those who cannot see it */
  readonly alt: string
  readonly howToRead: string
  /** the same numbers */
  readonly table: Table
  /** the table is part of the story and stands open */
  readonly tableOpen: boolean
}

export type Picture =
  /** vega-lite; where `swapRows` is true, another view of the same chart differs by the rows of its source `table` alone */
  | { readonly kind: 'chart'; readonly spec: object; readonly rows: readonly ChartRow[]; readonly swapRows: boolean }
  /** drawn to scale where it is shown, for wide screens and for narrow ones */
  | { readonly kind: 'plan'; readonly zones: readonly PlanZone[]; readonly valueMeaning: string | null }
