/** A picture with all that goes with it, as a cell holds it. */
import type { Drawing, MapPath, PlanZone } from '@loopwright/charts'
import type { Table } from '@loopwright/charts/table'

/** A chart and what it says. */
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

/** A drawing and what it says. */
export type Picture =
  /** a chart of ours, drawn with the page, for wide screens and for narrow ones */
  | { readonly kind: 'drawing'; readonly drawing: Drawing }
  /** a chart of one's own: a vega-lite specification with its data in it. A page with such charts carries what draws them, about 900 kB */
  | { readonly kind: 'chart'; readonly spec: object }
  /** drawn where it is shown, for wide screens and for narrow ones; one loop to scale */
  | {
      readonly kind: 'plan'
      readonly zones: readonly PlanZone[]
      /** paths of a line that is no single loop: a map is drawn; null: one loop in the order of its zones */
      readonly paths: readonly MapPath[] | null
      readonly valueMeaning: string | null
    }
