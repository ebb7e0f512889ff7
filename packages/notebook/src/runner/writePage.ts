import type { Cell } from '../cells/cell.ts'
import type { PageHead } from '../page/pageHead.ts'

export type { PageHead } from '../page/pageHead.ts'

/** One self-contained HTML file made of cells: it opens from disk and asks nobody for anything. */
export async function writePage(head: PageHead, cells: readonly Cell[]): Promise<string> {
  const [{ pageHtml }, { pageAssets }, { stillPictures }] = await Promise.all([
    import('../page/page.ts'),
    import('../assets.ts'),
    import('./still.ts'),
  ])
  const ownCharts = cells.some((cell) => cell.kind === 'chart' && cell.views.of.some(({ content }) => content.picture.kind === 'chart'))
  const [assets, stills] = await Promise.all([
    pageAssets(
      ownCharts,
      cells.some(({ kind }) => kind === 'live'),
    ),
    stillPictures(cells),
  ])
  return pageHtml(head, cells, assets, stills)
}
