/** Pictures and tables of the page, switched by its data. */
import type { Figure } from '../cells/figure.ts'
import { drawingHtml } from '../page/drawingHtml.ts'
import type { PageData, ViewsData } from '../page/pageData.ts'
import { planHtml } from '../page/planHtml.ts'
import { tableHtml } from '../page/tableHtml.ts'

/** Draws a chart of one's own. */
export type DrawOwn = (place: HTMLElement, spec: object) => Promise<void>

/** key that each cell shows now, by cell id */
const shownKeys = new Map<string, string>()

/** Draws the charts of one's own, top to bottom, each when the browser has nothing better to do: the text can be read and scrolled meanwhile. */
export async function drawAll(data: PageData, drawOwn: DrawOwn): Promise<void> {
  for (const [id, { shown, views }] of Object.entries(data.figures)) {
    const figure = views[shownKeys.get(id) ?? shown]
    const holder = document.getElementById(id)
    if (holder === null || figure?.picture.kind !== 'chart' || holder.querySelector('.drawn') !== null) continue
    await whenIdle()
    await drawFigure(holder, figure, drawOwn)
  }
  document.documentElement.dataset.drawn = 'all'
}

/** what is out of sight and still shows another option, by cell id */
const late = new Map<string, () => void>()

/** Shows one option of a choice in every cell that follows it: those in sight at once, the others as soon as the browser has nothing better to do, and before print. */
export function showView(data: PageData, choice: string, key: string, drawOwn: DrawOwn): void {
  const told = (id: string, show: (holder: HTMLElement) => void): [string, () => void][] => {
    const holder = document.getElementById(id)
    return holder === null ? [] : [[id, () => show(holder)]]
  }
  const all = [
    ...following(data.tables, choice, key).flatMap(([id, table]) =>
      told(id, (holder) => {
        holder.innerHTML = tableHtml(table)
      }),
    ),
    ...following(data.figures, choice, key).flatMap(([id, figure]) => {
      shownKeys.set(id, key)
      return told(id, (holder) => showFigure(holder, figure, drawOwn))
    }),
  ]
  const seen = all.filter(([id]) => isNear(document.getElementById(id)!))
  for (const [id, show] of all) late.set(id, show)
  for (const [id, show] of seen) {
    late.delete(id)
    show()
  }
  if (late.size > 0) void showLate()
}

let catching = false

/** One after another, each in a moment of its own; the document says so until all are shown. */
async function showLate(): Promise<void> {
  if (catching) return
  catching = true
  document.documentElement.toggleAttribute('data-late', true)
  while (late.size > 0) {
    await whenIdle()
    const [id, show] = late.entries().next().value ?? ['', () => {}]
    late.delete(id)
    show()
  }
  catching = false
  document.documentElement.toggleAttribute('data-late', false)
}

addEventListener('beforeprint', () => {
  for (const show of late.values()) show()
  late.clear()
})

/** in sight, or within half a screen of it */
function isNear(holder: HTMLElement): boolean {
  const { top, bottom } = holder.getBoundingClientRect()
  return top < 1.5 * innerHeight && bottom > -0.5 * innerHeight
}

function showFigure(holder: HTMLElement, figure: Figure, drawOwn: DrawOwn): void {
  setText(holder, '.finding', figure.finding)
  setText(holder, '.how', figure.howToRead)
  const table = holder.querySelector('.numbers')
  if (table) table.innerHTML = tableHtml(figure.table)
  void drawFigure(holder, figure, drawOwn)
}

/** The cells that follow a choice, each with what it shows for this key. */
function following<T>(cells: Readonly<Record<string, ViewsData<T>>>, choice: string, key: string): [string, T][] {
  return Object.entries(cells).flatMap(([id, { choice: own, views }]): [string, T][] => {
    const content = views[key]
    return own === choice && content !== undefined ? [[id, content]] : []
  })
}

async function drawFigure(holder: HTMLElement, figure: Figure, drawOwn: DrawOwn): Promise<void> {
  const place = holder.querySelector<HTMLElement>('.picture')
  if (place === null) return
  const { picture } = figure
  if (place.hasAttribute('aria-label')) place.setAttribute('aria-label', figure.alt)
  place.classList.add('drawn')
  if (picture.kind === 'plan') place.innerHTML = planHtml(picture, holder.id)
  else if (picture.kind === 'drawing') place.innerHTML = drawingHtml(picture.drawing)
  else await drawOwn(place, picture.spec)
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
