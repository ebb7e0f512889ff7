/** The marks of a plan: cells, crosses, chevrons, brackets. All in pixels; `scale` is pixels per metre. */
import { colour, escapeXml, type Point, points, px, shade, textAt } from '../draw/svg.ts'
import { type Cell, direction, plus } from './planGeometry.ts'
import type { PlanZone } from './planZone.ts'

/** From metres to pixels. */
export interface Paper {
  readonly scale: number
  readonly origin: Point
  readonly ringRadius: number
}

const ORIGIN: Point = { x: 0, y: 0 }

/**
 * @example place({ scale: 10, origin: { x: 5, y: 0 }, ringRadius: 0 }, { x: 1, y: 1 }) // => { x: 15, y: 10 }
 */
export function place({ scale, origin }: Paper, { x, y }: Point): Point {
  return { x: origin.x + x * scale, y: origin.y + y * scale }
}

/** Width and height of the text that a cell can hold. */
function inside(cell: Cell, zone: PlanZone, { scale }: Paper): [number, number] {
  const along = 2 * cell.halfLength * scale
  const across = 2 * cell.halfWidth * scale
  if (cell.arc !== null) return [Math.min(along, across), Math.min(along, across)]
  return Math.abs(cell.ahead.x) > 0.5 || zone.turn !== null ? [along, across] : [across, along]
}

/** True where every cell has room for the zone's name above its label; names in some cells only would be a riddle. */
export function namesFit(cells: readonly Cell[], zones: readonly PlanZone[], paper: Paper): boolean {
  return cells.every((cell) => {
    const zone = zones[cell.index]!
    const [width, height] = inside(cell, zone, paper)
    return width >= zone.name.length * 7.5 + 6 && height >= (zone.label === null ? 18 : 32)
  })
}

/** The zone's area, with cross, name and label as far as they fit; a pointer on it reads the whole. */
export function cellMark(cell: Cell, zone: PlanZone, paper: Paper, meaning: string | null, withName: boolean): string {
  const { ground, text } = zone.value === null ? { ground: colour('paper'), text: colour('ink') } : shade(zone.value)
  const centre = place(paper, cell.centre)
  const [width, height] = inside(cell, zone, paper)
  const label = zone.label !== null && width >= zone.label.length * 8 + 4 && height >= 14 ? [zone.label] : []
  const lines = withName ? [zone.name, ...label] : label
  const written = lines.map((line, index) =>
    textAt(line, centre.x, centre.y + 4.5 + (index - (lines.length - 1) / 2) * 15, {
      size: 12,
      anchor: 'middle',
      fill: text,
      bold: line === zone.label,
    }),
  )
  const says = [zone.name, zone.station?.title, zone.transfer ? 'transfer' : null].filter((part) => part !== null && part !== undefined)
  const reads = zone.label === null || meaning === null ? '' : `: ${zone.label} (${meaning})`
  return [
    `<g data-zone="${cell.index}"><title>${escapeXml(says.join(', ') + reads)}</title>`,
    `<path d="${area(cell, paper)}" fill="${ground}" stroke="currentColor" stroke-width="0.8"/>`,
    zone.transfer ? cross(cell, paper, text, lines.length === 0 ? 1 : Math.max(0.25, 1 - 21 / (Math.hypot(width, height) / 2))) : '',
    ...written,
    '</g>',
  ].join('')
}

/** A chevron beside the border to the next zone, inside the loop where it is in no number's way, pointing ahead; on a ring at its inner edge. */
export function chevron(cell: Cell, paper: Paper, middle: Point): string {
  const at = cell.arc === null ? beside(cell, paper, middle) : plus(paper.origin, direction(cell.arc[1]), radiusOf(cell, paper, -1) - 12)
  const side = { x: -cell.ahead.y, y: cell.ahead.x }
  const size = Math.min(6, Math.max(4, (cell.halfLength * paper.scale) / 4))
  const tip = plus(at, cell.ahead, size / 2)
  const back = plus(at, cell.ahead, -size / 2)
  const line = points([plus(back, side, -size), tip, plus(back, side, size)])
  return `<polyline points="${line}" fill="none" stroke="${colour('paper')}" stroke-width="5"/><polyline points="${line}" fill="none" stroke="currentColor" stroke-width="2"/>`
}

/** Inside the band, just past the border. */
function beside(cell: Cell, paper: Paper, middle: Point): Point {
  const side = { x: -cell.ahead.y, y: cell.ahead.x }
  const inwards = (middle.x - cell.exit.x) * side.x + (middle.y - cell.exit.y) * side.y >= 0 ? 1 : -1
  return plus(plus(place(paper, cell.exit), side, inwards * (cell.halfWidth * paper.scale + 8)), cell.ahead, 8)
}

/** The bracket on the outside of a station's cell. */
export function bracket(cell: Cell, paper: Paper, moved = false): string {
  const look = `fill="none" stroke="${moved ? colour('accent') : 'currentColor'}" stroke-width="${moved ? '3' : '1.6'}"`
  const near = cell.halfWidth * paper.scale + 3
  const far = near + 6
  if (cell.arc !== null) {
    const radius = paper.ringRadius * paper.scale
    const inset = 2 / radius
    const [from, to] = [cell.arc[0] + inset, cell.arc[1] - inset]
    const at = (angle: number, beyond: number) => plus(paper.origin, direction(angle), radius + beyond)
    const [a, b, c, d] = [at(from, near), at(from, far), at(to, far), at(to, near)] as [Point, Point, Point, Point]
    const r = px(radius + far)
    return `<path d="M${points([a])}L${points([b])}A${r} ${r} 0 ${to - from > Math.PI ? 1 : 0} 1 ${points([c])}L${points([d])}" ${look}/>`
  }
  const centre = place(paper, cell.centre)
  const side = { x: -cell.outward.y, y: cell.outward.x }
  const half = cell.halfLength * paper.scale - 2
  const corners = [plus(plus(centre, cell.outward, near), side, -half), plus(plus(centre, cell.outward, far), side, -half)]
  const others = [plus(plus(centre, cell.outward, far), side, half), plus(plus(centre, cell.outward, near), side, half)]
  return `<polyline points="${points([...corners, ...others])}" ${look}/>`
}

/** Where the outer edge of a bracket lies, in the middle of the cell. */
export function bracketEdge(cell: Cell, paper: Paper): Point {
  return plus(place(paper, cell.centre), cell.outward, cell.halfWidth * paper.scale + 10)
}

/** Highest and lowest pixel of a bracket: on a ring it slants. */
export function bracketSpan(cell: Cell, paper: Paper): { readonly top: number; readonly bottom: number } {
  const { y } = bracketEdge(cell, paper)
  if (cell.arc === null) return { top: y, bottom: y }
  const radius = (paper.ringRadius + cell.halfWidth) * paper.scale
  const ends = cell.arc.flatMap((angle) => [3, 10].map((beyond) => plus(paper.origin, direction(angle), radius + beyond).y))
  return { top: Math.min(y, ...ends), bottom: Math.max(y, ...ends) }
}

function corners(cell: Cell, paper: Paper): Point[] {
  const side = { x: -cell.ahead.y, y: cell.ahead.x }
  const along = cell.halfLength * paper.scale
  const across = cell.halfWidth * paper.scale
  const centre = place(paper, cell.centre)
  const signs = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const
  return signs.map(([a, b]) => plus(plus(centre, cell.ahead, a * along), side, b * across))
}

function area(cell: Cell, paper: Paper): string {
  if (cell.arc === null)
    return `M${corners(cell, paper)
      .map((each) => points([each]))
      .join('L')}Z`
  const [inner, outer] = sector(cell, paper)
  const large = cell.arc[1] - cell.arc[0] > Math.PI ? 1 : 0
  const [ri, ro] = [radiusOf(cell, paper, -1), radiusOf(cell, paper, 1)]
  return `M${points([outer[0]])}A${px(ro)} ${px(ro)} 0 ${large} 1 ${points([outer[1]])}L${points([inner[1]])}A${px(ri)} ${px(ri)} 0 ${large} 0 ${points([inner[0]])}Z`
}

/** Arms from the corners to the middle, or a part of the way where text stands there. */
function cross(cell: Cell, paper: Paper, stroke: string, part: number): string {
  const ends = cell.arc === null ? corners(cell, paper) : sector(cell, paper).flat()
  const centre = place(paper, cell.centre)
  const arms = ends.map((end) => {
    const to = { x: end.x + (centre.x - end.x) * part, y: end.y + (centre.y - end.y) * part }
    return `M${points([end])}L${points([to])}`
  })
  return `<path d="${arms.join('')}" fill="none" stroke="${stroke}" stroke-width="0.8"/>`
}

/** Corners of an arc's cell: inner from and to, outer from and to. */
function sector(cell: Cell, paper: Paper): [[Point, Point], [Point, Point]] {
  const [from, to] = cell.arc!
  const at = (angle: number, side: -1 | 1) => plus(paper.origin, direction(angle), radiusOf(cell, paper, side))
  return [
    [at(from, -1), at(to, -1)],
    [at(from, 1), at(to, 1)],
  ]
}

function radiusOf({ halfWidth }: Cell, { ringRadius, scale }: Paper, side: -1 | 1): number {
  return plus(ORIGIN, { x: ringRadius + side * halfWidth, y: 0 }, scale).x
}
