import type { ChartCell, PlanCell } from '../cells/cell.ts'
import { shownView } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { escapeHtml } from './html.ts'
import { planHtml } from './planHtml.ts'
import { tableHtml } from './tableHtml.ts'

/**
 * A figure: finding, picture, how to read it, and the numbers.
 *
 * @param level  of the heading that the finding is, 2 … 6
 * @param still  SVG text for readers without scripts; null: the numbers must do
 */
export function figureHtml(cell: ChartCell | PlanCell, level: number, still: string | null): string {
  const figure = shownView(cell.views)
  const heading = `h${Math.min(Math.max(level, 2), 3)}`
  return `<figure id="${cell.id}" class="${cell.kind}">
<div class="together">
<figcaption><${heading} class="finding">${escapeHtml(figure.finding)}</${heading}></figcaption>
${pictureHtml(cell.id, figure, still)}
<p class="how">${escapeHtml(figure.howToRead)}</p>
</div>
<details${figure.tableOpen ? ' open' : ''}><summary>The numbers<span class="hidden">: ${escapeHtml(figure.table.caption)}</span></summary><div class="numbers">${tableHtml(figure.table)}</div></details>
</figure>`
}

function pictureHtml(id: string, figure: Figure, still: string | null): string {
  const { picture, alt } = figure
  if (picture.kind === 'plan') return `<div class="picture">${planHtml(picture, id)}</div>`
  const waiting = `<div class="picture waiting" role="img" aria-label="${escapeHtml(alt)}"></div>`
  const without = still === null ? `<p>${escapeHtml(alt)}</p>` : `<img alt="${escapeHtml(alt)}" src="${svgAddress(still)}">`
  return `${waiting}<noscript>${without}</noscript>`
}

const ESCAPES: Readonly<Record<string, string>> = { '"': "'", "'": '%26%2339;', '%': '%25', '#': '%23', '<': '%3C', '>': '%3E', '&': '%26' }

/** An SVG as a data address inside a quoted attribute, short: its own quotes become single ones, so only what would end it is escaped. */
function svgAddress(svg: string): string {
  return `data:image/svg+xml,${svg.replace(/["'%#<>&]/g, (character) => ESCAPES[character]!).replaceAll('\n', ' ')}`
}
