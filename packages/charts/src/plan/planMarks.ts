/** The marks of a plan: cells, crosses, chevrons, brackets. All in pixels; `scale` is pixels per metre. */
import { colour, escapeXml, type Point, points, px, shade, textAt } from '../draw/svg.ts'
import { type Cell, isBent } from './planGeometry.ts'
import { direction, isBend, leftOf, type Piece, plus, pointAt } from './planPiece.ts'
import { type PlanZone, zoneWords } from './planZone.ts'

/** From metres to pixels. */
export interface Paper {
  readonly scale: number
  readonly origin: Point
}

/**
 * @example place({ scale: 10, origin: { x: 5, y: 0 } }, { x: 1, y: 1 }) // => { x: 15, y: 10 }
 */
export function place({ scale, origin }: Paper, { x, y }: Point): Point {
  return { x: origin.x + x * scale, y: origin.y + y * scale }
}

/** Width and height of the text that a cell can hold. */
function inside(cell: Cell, zone: PlanZone, { scale }: Paper): [number, number] {
  const along = 2 * cell.halfLength * scale
  const across = 2 * cell.halfWidth * scale
  if (isBent(cell)) return [Math.min(along, across), Math.min(along, across)]
  return Math.abs(cell.ahead.x) > 0.5 || zone.turn !== null ? [along, across] : [across, along]
}

/** True where every cell has room for the zone's name above its label; names in some cells only would be a riddle. */
export function namesFit(cells: readonly Cell[], zones: readonly PlanZone[], paper: Paper): boolean {
  const someCarrier = zones.some(({ carrier }) => carrier !== undefined)
  return cells.every((cell) => {
    const zone = zones[cell.index]!
    const [width, height] = inside(cell, zone, paper)
    return width >= zone.name.length * 7.5 + 6 && height >= (zone.label === null && !someCarrier ? 18 : 32)
  })
}

/** True where every label has room in its cell. */
export function labelsFit(cells: readonly Cell[], zones: readonly PlanZone[], paper: Paper): boolean {
  return cells.every((cell) => {
    const zone = zones[cell.index]!
    const [width, height] = inside(cell, zone, paper)
    return zone.label === null || (width >= zone.label.length * 8 + 4 && height >= 14)
  })
}

/** What is written in the cells: in all of them, or in none. */
export interface Written {
  readonly names: boolean
  readonly labels: boolean
}

/** The zone's area, with cross, name, label or carrier; a pointer on it reads the whole. */
export function cellMark(cell: Cell, zone: PlanZone, paper: Paper, meaning: string | null, { names, labels }: Written): string {
  const { ground, text } = zone.value === null ? { ground: colour('paper'), text: colour('ink') } : shade(zone.value)
  const centre = place(paper, cell.centre)
  const [width, height] = inside(cell, zone, paper)
  const { carrier = null } = zone
  const label = carrier !== null ? [carrier] : labels && zone.label !== null ? [zone.label] : []
  const lines = names ? [zone.name, ...label] : label
  const written = lines.map((line, index) =>
    textAt(line, centre.x, centre.y + 4.5 + (index - (lines.length - 1) / 2) * 15, {
      size: 12,
      anchor: 'middle',
      fill: text,
      bold: line === zone.label,
      ...(carrier !== null && index === lines.length - 1 ? { fill: colour('paper') } : {}),
    }),
  )
  const baseline = centre.y + 4.5 + ((lines.length - 1) / 2) * 15
  return [
    `<g data-zone="${cell.index}"><title>${escapeXml(zoneWords(zone, meaning))}</title>`,
    `<path d="${area(cell, paper)}" fill="${ground}" stroke="currentColor" stroke-width="0.8"/>`,
    zone.transfer ? cross(cell, paper, text, lines.length === 0 ? 1 : Math.max(0.25, 1 - 21 / (Math.hypot(width, height) / 2))) : '',
    carrier === null ? '' : carrierMark(carrier, { x: centre.x, y: baseline }),
    zone.starts === true ? startIn(cell, paper, Math.min(width, height)) : '',
    ...written,
    '</g>',
  ].join('')
}

/** size of the square of a carrier at the start, pixels, and as a share of a narrow cell */
const [START_SIZE, START_SHARE] = [7, 0.16]

/** In the middle of the inner side of its cell, between name and number. */
function startIn(cell: Cell, paper: Paper, narrow: number): string {
  const size = Math.min(START_SIZE, START_SHARE * narrow)
  return startMark(plus(place(paper, cell.centre), cell.outward, 1.5 + size / 2 - cell.halfWidth * paper.scale), size)
}

/** A small square around a point: a carrier at the start of a run. */
export function startMark({ x, y }: Point, size: number): string {
  return `<rect data-start="" x="${px(x - size / 2)}" y="${px(y - size / 2)}" width="${px(size)}" height="${px(size)}" fill="${colour('ink')}" stroke="${colour('paper')}" stroke-width="1"/>`
}

/** A plate behind the number of a carrier, whose baseline is at (x, y). */
export function carrierMark(name: string, { x, y }: Point): string {
  const wide = Math.max(18, name.length * 8 + 8)
  return `<rect data-carrier="${escapeXml(name)}" x="${px(x - wide / 2)}" y="${px(y - 12)}" width="${px(wide)}" height="15" rx="2" fill="${colour('ink')}"/>`
}

/** Where travel is shown, and which way it goes there. */
export interface Chevron {
  /** middle of the band; metres */
  readonly at: Point
  readonly heading: number
  /** as of the cell */
  readonly outside: 1 | -1
  readonly halfWidth: number
}

/** Behind square corners and bends, on the straight that follows; on a round ring at four places. */
export function chevronsOf(cells: readonly Cell[], zones: readonly PlanZone[]): Chevron[] {
  const total = cells.length
  if (cells.every(({ pieces }) => pieces.every(isBend))) {
    const eighths = [1, 3, 5, 7].map((eighth) => cells[Math.min(total - 1, Math.round((eighth * total) / 8))]!)
    return [...new Set(eighths)].map((cell) => chevronBehind(cell, cell.halfWidth))
  }
  return cells.flatMap((cell, index): Chevron[] => {
    const { pieces, outside, halfWidth } = cell
    const next = cells[(index + 1) % total]!
    const within = pieces.filter((piece, k) => k > 0 && !isBend(piece) && isBend(pieces[k - 1]!))
    const isSquare = zones[index]!.turn !== null && !isBend(pieces[0]!)
    const turns = (isSquare || isBend(pieces.at(-1)!)) && !isBend(next.pieces[0]!)
    return [
      ...within.map(({ from, heading }) => ({ at: from, heading, outside, halfWidth })),
      ...(turns ? [chevronBehind(cell, Math.min(halfWidth, next.halfWidth))] : []),
    ]
  })
}

function chevronBehind({ exit, ahead, outside }: Cell, halfWidth: number): Chevron {
  return { at: exit, heading: Math.atan2(ahead.y, ahead.x), outside, halfWidth }
}

/** Inside the loop, just past the border, where it is in no number's way; pointing ahead. */
export function chevron({ at, heading, outside, halfWidth }: Chevron, paper: Paper): string {
  const ahead = direction(heading)
  const side = leftOf(heading)
  const middle = plus(plus(place(paper, at), side, -outside * (halfWidth * paper.scale + 9)), ahead, 8)
  const size = 5
  const tip = plus(middle, ahead, size / 2)
  const back = plus(middle, ahead, -size / 2)
  return `<polyline data-travel="" points="${points([plus(back, side, -size), tip, plus(back, side, size)])}" fill="none" stroke="currentColor" stroke-width="2"/>`
}

/** The bracket on the outside of a station's cell. */
export function bracket(cell: Cell, paper: Paper, moved = false): string {
  const look = `fill="none" stroke="${moved ? colour('accent') : 'currentColor'}" stroke-width="${moved ? '3' : '1.6'}"`
  const metres = (pixels: number): number => pixels / paper.scale
  const inset = metres(2)
  const [first, last] = [cell.pieces[0]!, cell.pieces.at(-1)!]
  const foot = (piece: Piece, along: number): Point =>
    place(paper, pointAt(piece, along, cell.outside * (cell.halfWidth + metres(BRACKET_NEAR))))
  const back = edge(cell, paper, cell.outside * (cell.halfWidth + metres(BRACKET_FAR)), inset)
  return `<path d="M${points([foot(first, inset)])}L${back.slice(1)}L${points([foot(last, last.length - inset)])}" ${look}/>`
}
/** pixels from the band */
const [BRACKET_NEAR, BRACKET_FAR, BRACKET_OUTSIDE] = [3, 9, 10]

/** Where the outer edge of a bracket lies, in the middle of the cell. */
export function bracketEdge(cell: Cell, paper: Paper): Point {
  return plus(place(paper, cell.centre), cell.outward, cell.halfWidth * paper.scale + BRACKET_OUTSIDE)
}

/** Highest and lowest pixel of a bracket: on a bend it slants. */
export function bracketSpan(cell: Cell, paper: Paper): { readonly top: number; readonly bottom: number } {
  const { y } = bracketEdge(cell, paper)
  if (!isBent(cell)) return { top: y, bottom: y }
  const ends = cell.pieces.flatMap((piece) =>
    [0, piece.length].flatMap((along) =>
      [BRACKET_NEAR, BRACKET_OUTSIDE].map(
        (beyond) => place(paper, pointAt(piece, along, cell.outside * (cell.halfWidth + beyond / paper.scale))).y,
      ),
    ),
  )
  return { top: Math.min(y, ...ends), bottom: Math.max(y, ...ends) }
}

/** The way along a cell at a distance from its middle, from "M"; `inset` metres are left out at both ends. */
function edge({ pieces }: Cell, paper: Paper, left: number, inset = 0): string {
  return pieces
    .map((piece, index) => {
      const [from, to] = [index === 0 ? inset : 0, piece.length - (index === pieces.length - 1 ? inset : 0)]
      const [start, end] = [from, to].map((along) => points([place(paper, pointAt(piece, along, left))])) as [string, string]
      return `${index === 0 ? `M${start}` : `L${start}`}${arcTo(piece, paper, left, to - from)}${end}`
    })
    .join('')
}

/** "L", or the arc of a bend. */
function arcTo({ radius }: Piece, { scale }: Paper, left: number, length: number, back = false): string {
  if (radius === null) return 'L'
  const r = px(Math.abs(radius + left) * scale)
  return `A${r} ${r} 0 ${length / Math.abs(radius) > Math.PI ? 1 : 0} ${radius > 0 === back ? 0 : 1} `
}

function area(cell: Cell, paper: Paper): string {
  const inner = cell.pieces.toReversed().map((piece) => {
    const [start, end] = [piece.length, 0].map((along) => points([place(paper, pointAt(piece, along, -cell.halfWidth))])) as [
      string,
      string,
    ]
    return `L${start}${arcTo(piece, paper, -cell.halfWidth, piece.length, true)}${end}`
  })
  return `${edge(cell, paper, cell.halfWidth)}${inner.join('')}Z`
}

/** Arms from the corners to the middle, or a part of the way where text stands there. */
function cross(cell: Cell, paper: Paper, stroke: string, part: number): string {
  const [first, last] = [cell.pieces[0]!, cell.pieces.at(-1)!]
  const ends = [-1, 1].flatMap((side) => [
    place(paper, pointAt(first, 0, side * cell.halfWidth)),
    place(paper, pointAt(last, last.length, side * cell.halfWidth)),
  ])
  const centre = place(paper, cell.centre)
  const arms = ends.map((end) => {
    const to = { x: end.x + (centre.x - end.x) * part, y: end.y + (centre.y - end.y) * part }
    return `M${points([end])}L${points([to])}`
  })
  return `<path d="${arms.join('')}" fill="none" stroke="${stroke}" stroke-width="0.8"/>`
}
