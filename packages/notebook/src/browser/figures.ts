/** Pictures and tables of the page, drawn and redrawn from its data. */
import type { Figure } from '../figure.ts'
import { planHtml } from '../page/planHtml.ts'
import { type PackedViews, type PageData, unpackView } from '../page/pageData.ts'
import { tableHtml } from '../page/tableHtml.ts'
import type { Table } from '@loopwright/charts'
import { draw } from './draw.ts'

/** key that each cell shows now, by cell id */
const shownKeys = new Map<string, string>()

/** Draws all charts, top to bottom, each when the browser has nothing better to do: the text can be read and scrolled meanwhile. */
export async function drawAll(data: PageData): Promise<void> {
  for (const [id, packed] of Object.entries(data.figures)) {
    await whenIdle()
    const holder = document.getElementById(id)
    if (holder === null || holder.querySelector('.drawn') !== null) continue
    await drawFigure(holder, unpackView(packed, shownKeys.get(id) ?? packed.shown) as Figure)
  }
  document.documentElement.dataset['drawn'] = 'all'
}

/** Shows one option of a choice in every cell that follows it. */
export function showView(data: PageData, choice: string, key: string): void {
  const following = (entry: [string, PackedViews]): boolean => entry[1].choice === choice && entry[1].keys.includes(key)
  for (const [id, packed] of Object.entries(data.tables).filter(following)) {
    const holder = document.getElementById(id)
    if (holder) holder.innerHTML = tableHtml(unpackView(packed, key) as Table)
  }
  for (const [id, packed] of Object.entries(data.figures).filter(following)) {
    shownKeys.set(id, key)
    const holder = document.getElementById(id)
    if (holder === null) continue
    const figure = unpackView(packed, key) as Figure
    setText(holder, '.finding', figure.finding)
    setText(holder, '.how', figure.howToRead)
    const table = holder.querySelector('.numbers')
    if (table) table.innerHTML = tableHtml(figure.table)
    void drawFigure(holder, figure)
  }
}

async function drawFigure(holder: HTMLElement, figure: Figure): Promise<void> {
  const place = holder.querySelector<HTMLElement>('.picture')
  if (place === null) return
  if (place.hasAttribute('aria-label')) place.setAttribute('aria-label', figure.alt)
  place.classList.add('drawn')
  if (figure.picture.kind === 'plan') place.innerHTML = planHtml(figure.picture)
  else await draw(place, figure.picture)
}

function setText(holder: HTMLElement, selector: string, text: string): void {
  const element = holder.querySelector(selector)
  if (element) element.textContent = text
}

function whenIdle(): Promise<void> {
  return new Promise((resolve) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(() => resolve(), { timeout: 200 })
    else setTimeout(resolve, 0)
  })
}
