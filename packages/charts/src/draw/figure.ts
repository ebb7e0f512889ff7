/** What every chart gives: a picture, and in words and numbers what the picture says. */
import type { TopLevelSpec } from 'vega-lite'
import type { Table } from '../table/table.ts'

export interface Figure {
  /** vega-lite; free of colours: the look comes from `vegaConfig`. Its main data source is named `table` */
  readonly spec: TopLevelSpec
  /** the rows of the source `table`, also in the spec. Where `swapRows` is true, a view of the same chart shows another count by these rows alone */
  readonly rows: readonly ChartRow[]
  /** the spec is the same for every count of one sweep: `view.data('table', rows)` is enough */
  readonly swapRows: boolean
  /** one or two sentences, computed from the data: the caption */
  readonly finding: string
  /** what the picture shows, for those who cannot see it; states the finding */
  readonly alt: string
  /** how to read it, one line */
  readonly readLine: string
  /** the same numbers */
  readonly table: Table
}

export type ChartRow = Readonly<Record<string, string | number | boolean | null>>

/** Words and times of the window that the numbers count for. */
export interface WindowWords {
  /** what one window is called, a noun whose plural ends in s: "shift". Default: "window" */
  readonly per?: string
  /** seconds; the whole window, breaks included */
  readonly windowSeconds: number
  /** seconds; the window without breaks. Default: windowSeconds */
  readonly netSeconds?: number
  /** units wanted in one window; null: no plan. Default: null */
  readonly plan?: number | null
}
