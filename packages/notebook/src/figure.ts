/** A picture with all that goes with it, as a cell holds it. */
import type { ChartRow, Table, Figure as ChartFigure, LoopPlan } from '@loopwright/charts'

export interface Figure {
  /** what the picture shows of these very data, one or two sentences: the caption */
  readonly finding: string
  readonly picture: Picture
  /** what the picture shows, for those who cannot see it */
  readonly alt: string
  readonly howToRead: string
  /** the same numbers */
  readonly table: Table
}

export type Picture =
  /** vega-lite; where `swapRows` is true, another view of the same chart differs by the rows of its source `table` alone */
  | { readonly kind: 'chart'; readonly spec: object; readonly rows: readonly ChartRow[]; readonly swapRows: boolean }
  /** drawn twice: for a screen of 360 pixels and for wide ones */
  | { readonly kind: 'plan'; readonly wide: string; readonly narrow: string; readonly note: string | null }

/** A chart as a cell holds it. */
export function chartFigure(chart: ChartFigure): Figure {
  const { spec, rows, swapRows, finding, alt, readLine, table } = chart
  return { finding, picture: { kind: 'chart', spec, rows, swapRows }, alt, howToRead: readLine, table }
}

/** A plan of the loop as a cell holds it, with the words that only the teller knows. */
export function planFigure(wide: LoopPlan, narrow: LoopPlan, words: { readonly finding: string; readonly howToRead: string; readonly table: Table }): Figure {
  return { ...words, alt: wide.description, picture: { kind: 'plan', wide: wide.svg, narrow: narrow.svg, note: wide.note } }
}
