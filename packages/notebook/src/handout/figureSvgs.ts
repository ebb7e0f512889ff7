/** Each figure of a tale as an SVG that stands alone: white ground, no variables, words for those who cannot see it. */
import { drawingSvg } from '@loopwright/charts/draw'
import { type Cell, shownView } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { drawnChart } from '../own/drawnChart.ts'
import { escapeHtml } from '../page/html.ts'
import { drawPlan } from '../page/planHtml.ts'

/** A figure of a tale, drawn. */
export interface FigureSvg {
  /** of its cell */
  readonly id: string
  readonly kind: 'chart' | 'plan'
  /** the picture beside the answer */
  readonly lead: boolean
  readonly finding: string
  /** what it shows, for those who cannot see it */
  readonly alt: string
  readonly svg: string
}

/** pixels */
const WIDTHS = { chart: 900, plan: 1100 }

/**
 * The figures in their order, each in the view that is shown first.
 *
 * @example (await figureSvgs([proseCell('note', 'First.')])).length // => 0
 */
export async function figureSvgs(cells: readonly Cell[]): Promise<FigureSvg[]> {
  const figures: FigureSvg[] = []
  for (const cell of cells) {
    if (cell.kind !== 'chart' && cell.kind !== 'plan') continue
    const figure = shownView(cell.views)
    const { finding, alt } = figure
    figures.push({
      id: cell.id,
      kind: cell.kind,
      lead: cell.kind === 'chart' && cell.lead === true,
      finding,
      alt,
      svg: alone(await pictureSvg(cell.id, figure), alt),
    })
  }
  return figures
}

async function pictureSvg(id: string, { picture }: Figure): Promise<string> {
  if (picture.kind === 'drawing') return drawingSvg(picture.drawing, { widthPixels: WIDTHS.chart, look: 'light' })
  if (picture.kind === 'chart') return (await drawnChart(picture.spec)).svg
  return drawPlan(picture, { id, widthPixels: WIDTHS.plan, valueMeaning: picture.valueMeaning }).svg
}

/** Variables become the colours of white paper that stand behind them; a file that is opened by itself says what it is. */
function alone(svg: string, alt: string): string {
  const plain = svg
    .replace(/var\(--[\w-]+,\s*([^()]*(?:\([^()]*\))?[^()]*)\)/g, '$1')
    .replace(/(<svg\b[^>]*?) (?:role|aria-label|aria-labelledby|aria-hidden)="[^"]*"/g, '$1')
  const [, open] = /^[^<]*(<svg\b[^>]*>)/.exec(plain) ?? []
  if (open === undefined) return plain
  const named = open.includes('xmlns=') ? open : open.replace('<svg', '<svg xmlns="http://www.w3.org/2000/svg"')
  const told = named.replace('<svg', `<svg role="img" aria-label="${escapeHtml(alt)}"`)
  return `${plain.replace(open, () => `${told}<rect width="100%" height="100%" fill="#ffffff"/>`)}\n`
}
