import type { ChartCell, PlanCell } from '../cells/cell.ts'
import { shownView } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { drawingHtml } from './drawingHtml.ts'
import { escapeHtml } from './html.ts'
import { planHtml } from './planHtml.ts'
import { figureSavesHtml } from './savesHtml.ts'
import { tableHtml } from './tableHtml.ts'

/**
 * A figure: finding and how to read it, the picture beside them where there is room, and the numbers.
 *
 * @param level  of the heading that the finding is, 2 … 6
 * @param still  SVG text of a chart of one's own for readers without scripts; null: the numbers must do
 */
export function figureHtml(cell: ChartCell | PlanCell, level: number, still: string | null): string {
  return `<figure id="${cell.id}" class="${cell.kind}">
${togetherHtml(cell, level, still)}
${numbersHtml(shownView(cell.views))}
</figure>`
}

/** The figure that proves the answer: its numbers stand further down, under the id of the figure and "-numbers". */
export function leadFigureHtml(cell: ChartCell | PlanCell, still: string | null): string {
  return `<figure id="${cell.id}" class="${cell.kind} lead">
${togetherHtml(cell, 2, still)}
</figure>`
}

export function leadNumbersHtml(cell: ChartCell | PlanCell): string {
  return `<div id="${cell.id}-numbers" class="leadnumbers">${numbersHtml(shownView(cell.views), { named: true })}</div>`
}

function togetherHtml(cell: ChartCell | PlanCell, level: number, still: string | null): string {
  const figure = shownView(cell.views)
  const heading = `h${Math.min(Math.max(level, 2), 3)}`
  return `<div class="together">
<figcaption><${heading} class="finding">${escapeHtml(figure.finding)}</${heading}></figcaption>
${pictureHtml(cell.id, figure, still)}
<p class="how">${escapeHtml(figure.howToRead)}</p>
</div>
${figureSavesHtml()}`
}

/** Where they stand below their figure they need no name but for those who cannot see it. */
function numbersHtml(figure: Figure, { named = false } = {}): string {
  const name = `: ${escapeHtml(figure.table.caption)}`
  return `<details${figure.tableOpen ? ' open' : ''}><summary>The numbers${named ? name : `<span class="hidden">${name}</span>`}</summary><div class="numbers">${tableHtml(figure.table)}</div></details>`
}

function pictureHtml(id: string, figure: Figure, still: string | null): string {
  const { picture, alt } = figure
  if (picture.kind === 'plan') return `<div class="picture">${planHtml(picture, id)}</div>`
  if (picture.kind === 'drawing')
    return `<div class="picture" role="img" aria-label="${escapeHtml(alt)}">${drawingHtml(picture.drawing)}</div>`
  const waiting = `<div class="picture waiting" role="img" aria-label="${escapeHtml(alt)}"></div>`
  const without = still === null ? `<p>${escapeHtml(alt)}</p>` : `<img alt="${escapeHtml(alt)}" src="${svgAddress(still)}">`
  return `${waiting}<noscript>${without}</noscript>`
}

const ESCAPES: Readonly<Record<string, string>> = { '"': "'", "'": '%26%2339;', '%': '%25', '#': '%23', '<': '%3C', '>': '%3E', '&': '%26' }

/** An SVG as a data address inside a quoted attribute, short: its own quotes become single ones, so only what would end it is escaped. */
function svgAddress(svg: string): string {
  return `data:image/svg+xml,${svg.replace(/["'%#<>&]/g, (character) => ESCAPES[character]!).replaceAll('\n', ' ')}`
}
