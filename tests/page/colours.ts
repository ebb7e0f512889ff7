/** Colours as a page is painted, and how far apart they are. */
import { contrast } from '../../packages/charts/src/draw/contrast.ts'

/** What is read of a page in forced colours; each colour as "rgb(1, 2, 3)". */
export interface ForcedLook {
  readonly page: string
  /** buttons of the count that is looked at, and of another */
  readonly chosen: { readonly text: string; readonly ground: string }
  readonly other: { readonly ground: string }
  /** the chosen count on the curve */
  readonly picked: string
  /** segments of the first station, each once */
  readonly states: readonly { readonly fill: string; readonly stroke: string }[]
  /** of all lines of the curve, each once */
  readonly dashes: readonly string[]
}

/** runs in a page of a sweep */
export const FORCED_LOOK = `(() => {
  const of = (selector) => getComputedStyle(document.querySelector(selector))
  const chosen = of('.choice input:checked + span')
  const canvas = document.createElement('div')
  canvas.style.color = 'Canvas'
  document.body.append(canvas)
  const page = getComputedStyle(canvas).color
  canvas.remove()
  const areas = [...document.querySelectorAll('#stations .wide rect[data-tip]')].map((rect) => getComputedStyle(rect))
  const states = [...new Map(areas.map(({ fill, stroke }) => [fill, { fill, stroke }])).values()]
  const dashes = [...document.querySelectorAll('#counts .wide path')].map((path) => getComputedStyle(path)).filter(({ fill }) => fill === 'none').map(({ strokeDasharray }) => strokeDasharray)
  return { page, chosen: { text: chosen.color, ground: chosen.backgroundColor }, other: { ground: page }, picked: of('#counts .wide .picked').fill, states, dashes: [...new Set(dashes)] }
})()`

/** runs in a page with a shaded plan: the value of each zone in per cent, its ground, and the page's */
export const SHADES = `[...document.querySelectorAll('#plan .wide [data-zone]')].map((zone) => ({
  value: Number(/: ([\\d.]+) \\(/.exec(zone.querySelector('title').textContent)[1]),
  ground: getComputedStyle(zone.querySelector('path')).fill,
  page: getComputedStyle(document.body).backgroundColor,
}))`

/** Contrast of two painted colours, 1 … 21. */
export function ratio(one: string, other: string): number {
  return contrast(hex(one), hex(other))
}

function hex(painted: string): string {
  const parts = /^rgba?\((\d+), (\d+), (\d+)/.exec(painted)
  if (parts === null) throw new Error(`"${painted}" is no painted colour`)
  return `#${parts
    .slice(1, 4)
    .map((part) => Number(part).toString(16).padStart(2, '0'))
    .join('')}`
}
