/** The loop on paper, to scale, as SVG text. */
import { EDGE, planFoot } from './planFoot.ts'
import { boxOf, type Cell, type Outline, outline, turned } from './planGeometry.ts'
import { bracket, bracketEdge, bracketSpan, cellMark, chevron, chevronsOf, labelsFit, namesFit, type Paper, place } from './planMarks.ts'
import { LINE_PIXELS, NAME_SIZE, type Name, placeNames, sideOf, type Wanted } from './planNames.ts'
import { carriersOn, keyedTitle, type PlanZone } from './planZone.ts'
import { colour, escapeXml, type Point, points, px, textAt } from '../draw/svg.ts'

/** How a line is drawn. */
export interface PlanOptions {
  /** pixels; the drawing is made for this width. Show one of 360 on phones and one of 1100 elsewhere. Default: 1100 */
  readonly widthPixels?: number
  /** starts every id in the SVG; give each drawing of a page its own. Default: "plan" */
  readonly id?: string
  /** what shade and label mean: "share of the shift with a carrier in the zone, %"; null: nothing is shaded. Default: null */
  readonly valueMeaning?: string | null
}

/** A drawing of a line, and what it shows as words. */
export interface LoopPlan {
  /** one `<svg>` element with `<title>` and `<desc>`, role img; colours by CSS variables of `themeCss`, each with a fall-back */
  readonly svg: string
  readonly title: string
  /** the text alternative */
  readonly description: string
  /** drawn as a closed loop to scale; else as a ring, and `note` says why */
  readonly toScale: boolean
  /** also written under the drawing; null: none */
  readonly note: string | null
}

/** narrower drawings stand their long side upright */
const NARROW_PIXELS = 600

/**
 * A plan of the loop: zones as a band of cells to scale, chevrons at the corners, brackets and names of the stations outside.
 *
 * @param zones     in travel order, at least one
 * @throws RangeError   if there is no zone, a length is not above 0, or the width is below 200 pixels
 * @example loopPlan(['Z1', 'Z2', 'Z3', 'Z4'].map((name) => ({ name, lengthMetres: 1, turn: 'right', transfer: false, station: null, value: null, label: null }))).title // => 'Plan of the loop'
 */
export function loopPlan(zones: readonly PlanZone[], { widthPixels = 1100, id = 'plan', valueMeaning = null }: PlanOptions = {}): LoopPlan {
  if (!(widthPixels >= 200)) throw new RangeError(`a plan ${widthPixels} pixels wide cannot be read; give 200 or more`)
  const drawn = outline(zones)
  const note = drawn.ringBecause === null ? null : `${drawn.ringBecause}: drawn as a ring, lengths to scale along it.`
  const { cells, paper, room } = layOut(drawn, zones, widthPixels)
  const names = placeNames(wantedNames(cells, zones, paper), room)
  const written = { names: namesFit(cells, zones, paper), labels: labelsFit(cells, zones, paper) }
  const body = [
    ...cells.map((cell) => cellMark(cell, zones[cell.index]!, paper, valueMeaning, written)),
    ...chevronsOf(cells, zones).map((each) => chevron(each, paper)),
    ...cells
      .filter(({ index }) => zones[index]!.station !== null)
      .map((cell) => bracket(cell, paper, zones[cell.index]!.station?.moved !== undefined)),
    ...names.map(nameMark),
  ]
  const [top, bottom] = reach(cells, names, paper)
  const foot = planFoot(zones, {
    width: widthPixels,
    from: bottom + 14,
    scale: paper.scale,
    meaning: valueMeaning,
    labels: written.labels,
    note,
  })
  const height = foot.bottom + EDGE - (top - EDGE)
  const title = 'Plan of the loop'
  const description = wordsOf(zones, drawn, valueMeaning)
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="lw-plan" viewBox="0 ${px(top - EDGE)} ${px(widthPixels)} ${px(height)}" width="${px(widthPixels)}" height="${px(height)}" role="img" aria-labelledby="${id}-title ${id}-desc" font-family="system-ui, sans-serif" color="${colour('ink')}" fill="currentColor">`,
    `<title id="${id}-title">${escapeXml(title)}</title><desc id="${id}-desc">${escapeXml(description)}</desc>`,
    ...body,
    foot.svg,
    '</svg>',
  ].join('\n')
  return { svg, title, description, toScale: drawn.ringBecause === null, note }
}

/** Scale and origin, so that the loop and the names on both sides fit the width. */
function layOut(drawn: Outline, zones: readonly PlanZone[], width: number): { cells: readonly Cell[]; paper: Paper; room: number } {
  const narrow = width < NARROW_PIXELS
  const first = extent(drawn.cells)
  const upright = narrow && first.right - first.left > first.bottom - first.top
  const cells = upright ? turned(drawn.cells) : drawn.cells
  const { left, right, top, bottom } = extent(cells)
  const named = (side: 'left' | 'right') => cells.some(({ index, outward }) => zones[index]!.station !== null && sideOf(outward) === side)
  const wish = narrow ? 116 : 170
  const [roomLeft, roomRight] = [named('left') ? wish : 24, named('right') ? wish : 24]
  const mean = zones.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0) / zones.length
  const tallest = narrow ? 900 : 560
  const scale = Math.min((width - roomLeft - roomRight) / (right - left), tallest / (bottom - top), (narrow ? 46 : 96) / mean)
  const spare = (width - roomLeft - roomRight - (right - left) * scale) / 2
  const origin = { x: roomLeft + spare - left * scale, y: -top * scale }
  return { cells, paper: { scale, origin }, room: wish + spare - 10 }
}

function extent(cells: readonly Cell[]): { left: number; right: number; top: number; bottom: number } {
  const boxes = cells.map(boxOf)
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  }
}

function wantedNames(cells: readonly Cell[], zones: readonly PlanZone[], paper: Paper): Wanted[] {
  return cells.flatMap((cell) => {
    const { station } = zones[cell.index]!
    if (station === null) return []
    const duties = station.duties.filter((duty) => duty !== station.title.toLowerCase())
    const moved = station.moved === undefined ? [] : [station.moved]
    return [
      {
        title: keyedTitle(station),
        under: [...duties, ...moved].join(', '),
        moved: moved.length > 0,
        at: bracketEdge(cell, paper),
        ...bracketSpan(cell, paper),
        outward: cell.outward,
      },
    ]
  })
}

function nameMark({ lines, under, anchor, x, y, lead, moved }: Name): string {
  const fill = moved ? { fill: colour('accent') } : {}
  const title = lines.map((line, index) => textAt(line, x, y + index * LINE_PIXELS, { size: NAME_SIZE, anchor, bold: true, ...fill }))
  const second = under.map((line, index) => textAt(line, x, y + (lines.length + index) * LINE_PIXELS, { size: NAME_SIZE, anchor, ...fill }))
  const line = lead === null ? '' : `<polyline points="${points(lead)}" fill="none" stroke="${colour('quiet')}" stroke-width="0.8"/>`
  return [line, ...title, ...second].join('')
}

/** Highest and lowest pixel of band and names. */
function reach(cells: readonly Cell[], names: readonly Name[], paper: Paper): [number, number] {
  const { top, bottom } = extent(cells)
  const at = (y: number): Point => place(paper, { x: 0, y })
  const lastLine = ({ lines, under, y }: Name) => y + (lines.length + under.length - 1) * LINE_PIXELS + 4
  return [Math.min(at(top).y - 10, ...names.map(({ y }) => y - NAME_SIZE)), Math.max(at(bottom).y + 10, ...names.map(lastLine))]
}

/**
 * The text alternative of a plan, without the drawing.
 *
 * @param zones    as of the plan
 * @param meaning  of shade and label; null: nothing is shaded
 * @throws RangeError   as the plan does
 * @example planWords(['Z1', 'Z2'].map((name) => ({ name, lengthMetres: 1, turn: null, transfer: false, station: null, value: null, label: null })), null) // => 'A loop of 2 zones, 2 m, drawn as a ring. There are no stations.'
 */
export function planWords(zones: readonly PlanZone[], meaning: string | null): string {
  return wordsOf(zones, outline(zones), meaning)
}

function wordsOf(zones: readonly PlanZone[], { ringBecause }: Outline, meaning: string | null): string {
  const metres = zones.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0)
  const stations = zones.flatMap(({ name, station }) => {
    if (station === null) return []
    return [
      `${keyedTitle(station)} in ${name}${station.moved === undefined ? '' : `, ${station.moved}`}${station.duties.length === 0 ? '' : ` (${station.duties.join(' and ')})`}`,
    ]
  })
  const transfers = zones.filter(({ transfer }) => transfer).map(({ name }) => name)
  const fullest = zones.filter(({ value }) => value !== null).toSorted((a, b) => b.value! - a.value!)[0]
  return [
    `A loop of ${zones.length} zones, ${Math.round(metres * 10) / 10} m, ${ringBecause === null ? 'to scale' : 'drawn as a ring'}.`,
    stations.length === 0 ? 'There are no stations.' : `Stations in travel order: ${stations.join(', ')}.`,
    ...(transfers.length === 0 ? [] : [`Transfers: ${transfers.join(', ')}.`]),
    ...carriersOn(zones),
    ...(fullest === undefined || meaning === null
      ? []
      : [`Highest ${meaning}: ${fullest.name}${fullest.label === null ? '' : `, ${fullest.label}`}.`]),
  ].join(' ')
}
