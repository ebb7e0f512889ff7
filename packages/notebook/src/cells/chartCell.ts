import type { Figure as ChartFigure } from '@loopwright/charts'
import { type ChartCell, oneView } from './cell.ts'
import type { Figure } from './figure.ts'

/** A chart of ours as a cell holds it. */
export function chartFigure({ finding, drawing, alt, readLine, table }: ChartFigure): Figure {
  return { finding, picture: { kind: 'drawing', drawing }, alt, howToRead: readLine, table, tableOpen: false }
}

/** A chart as a cell that no choice switches. */
export function chartCell(id: string, figure: ChartFigure): ChartCell {
  return { kind: 'chart', id, views: oneView(chartFigure(figure)) }
}

/** A chart whose table is part of the story: a terminal shows it, a page shows it open. */
export const openChartCell = (id: string, figure: ChartFigure): ChartCell => opened(chartCell(id, figure))

/** The same with the tables of all views open. */
export function opened(cell: ChartCell): ChartCell {
  const of = cell.views.of.map(({ key, content }) => ({ key, content: { ...content, tableOpen: true } }))
  return { ...cell, views: { ...cell.views, of } }
}
