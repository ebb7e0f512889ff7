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
