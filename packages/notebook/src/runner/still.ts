import type { Cell } from '../cells/cell.ts'
import { shownView } from '../cells/cell.ts'

/** The first view of every chart of one's own as SVG text, by cell id, for readers without scripts. */
export async function stillPictures(cells: readonly Cell[]): Promise<ReadonlyMap<string, string>> {
  const charts = cells.flatMap((cell) => {
    const picture = cell.kind === 'chart' ? shownView(cell.views).picture : null
    return picture?.kind === 'chart' ? [{ id: cell.id, own: picture.spec }] : []
  })
  if (charts.length === 0) return new Map()
  const { drawnChart } = await import('../own/drawnChart.ts')
  const stills = new Map<string, string>()
  for (const { id, own } of charts) stills.set(id, thinned((await drawnChart(own)).svg))
  return stills
}

/** Numbers of a drawing to a hundredth of a pixel: nobody sees the rest. */
function thinned(svg: string): string {
  return svg.replace(/\d+\.\d{3,}/g, (digits) => String(Math.round(Number(digits) * 100) / 100))
}
