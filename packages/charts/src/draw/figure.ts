/** What every chart gives: a picture, and in words and numbers what the picture says. */
import type { Drawing } from '../drawing/drawing.ts'
import type { Table } from '../table/table.ts'

/** A chart: its drawing, and what it shows as sentences and as a table. */
export interface Figure {
  /** free of colours: `drawingSvg` paints it in the look that is asked for */
  readonly drawing: Drawing
  /** one or two sentences, computed from the data: the caption */
  readonly finding: string
  /** what the picture shows, for those who cannot see it; states the finding */
  readonly alt: string
  /** how to read it, one line */
  readonly readLine: string
  /** the same numbers */
  readonly table: Table
}

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
