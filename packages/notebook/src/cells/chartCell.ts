import type { Figure } from '@loopwright/charts'
import { type ChartCell, oneView } from './cell.ts'

/** A chart as a cell that no choice switches. */
export function chartCell(id: string, { finding, spec, rows, swapRows, alt, readLine, table }: Figure): ChartCell {
  return {
    kind: 'chart',
    id,
    views: oneView({ finding, picture: { kind: 'chart', spec, rows, swapRows }, alt, howToRead: readLine, table, tableOpen: false }),
  }
}

/** A chart whose table is part of the story: a terminal shows it, a page shows it open. */
export const openChartCell = (id: string, figure: Figure): ChartCell => opened(chartCell(id, figure))

/** The same with the tables of all views open. */
export function opened(cell: ChartCell): ChartCell {
  const of = cell.views.of.map(({ key, content }) => ({ key, content: { ...content, tableOpen: true } }))
  return { ...cell, views: { ...cell.views, of } }
}
