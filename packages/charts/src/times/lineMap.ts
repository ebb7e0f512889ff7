/** A line that is no single loop, as a map: zones from top to bottom in the order of travel, lanes beside each other, ways back at the left. Not to scale. */
import { lineLayers, type MapPath, type Placed } from '../draw/lineLayers.ts'
import type { LoopPlan, PlanOptions } from '../plan/plan.ts'
import { carrierSigns, carriersOn, keyedTitle, type PlanZone, zoneWords } from '../plan/planZone.ts'
import { EDGE } from '../plan/planFoot.ts'
import { carrierMark, startMark } from '../plan/planMarks.ts'
import { LINE_PIXELS } from '../plan/planNames.ts'
import { colour, escapeXml, points, px, shade, textAt } from '../draw/svg.ts'
import { textPixels, wrapWords } from '../draw/wrapWords.ts'

/** pixels between two rows, and of a line of text */
const BETWEEN = 16
const TEXT_LINE = 15
const LINES_MAX = 3
/** of a cell: on a narrow drawing, and on a wide one */
const CELL_MAX = 190
const WIDE_CELL_MAX = 260
const WIDE = 600
const LANE_GAP = 26
/** pixels between two ways back */
const TRACK = 9
const TRACKS_MAX = 5
const SIZE = 12
/** pixels below a cell in which a way back passes */
const BELOW = 10
/** pixels of an arrow to the store */
const OUT = 10
/** of the square of a carrier at the start */
const START_SIZE = 6
/** for the plate of a carrier */
const CARRIER_ROOM = 34
const SHADES = [0, 0.25, 0.5, 0.75, 1]

interface Paper extends Placed {
  readonly zones: readonly PlanZone[]
  readonly width: number
  readonly left: number
  readonly cellWidth: number
  readonly cellHeight: number
  /** of each zone: its name and its station, in lines */
  readonly words: readonly (readonly string[])[]
  readonly meaning: string | null
}

/**
 * A map of any line.
 *
 * @param zones   at least one
 * @param paths   by index of the zone; STORE (−1) is drawn as an entry or an exit
 * @throws RangeError   if there is no zone, a path leads nowhere, or the width is below 200 pixels
 * @example lineMap(['Z1', 'Z2', 'Z3'].map((name) => ({ name, lengthMetres: 1, turn: null, transfer: false, station: null, value: null, label: null })), [{ from: 0, to: 1 }, { from: 1, to: 2 }]).title // => 'Map of the line'
 */
export function lineMap(
  zones: readonly PlanZone[],
  paths: readonly MapPath[],
  { widthPixels = 1100, id = 'map', valueMeaning = null }: PlanOptions = {},
): LoopPlan {
  if (zones.length === 0) throw new RangeError('a map needs at least one zone')
  if (!(widthPixels >= 200)) throw new RangeError(`a map ${widthPixels} pixels wide cannot be read; give 200 or more`)
  const lost = paths.find(({ from, to }) => zones[Math.max(from, 0)] === undefined || zones[Math.max(to, 0)] === undefined)
  if (lost !== undefined) throw new RangeError(`a path leads from zone ${lost.from} to ${lost.to}, but there are ${zones.length}`)
  const first = Math.max(
    0,
    zones.findIndex(({ station }) => station?.duties.includes('load') === true),
  )
  const placed = lineLayers(zones.length, paths, first)
  const back = paths.filter(({ from, to }) => from >= 0 && to >= 0 && placed.row[to]! <= placed.row[from]!)
  const left = EDGE + (back.length === 0 ? 0 : Math.min(back.length, TRACKS_MAX) * TRACK + 14)
  const room = (widthPixels - left - EDGE + LANE_GAP - 10) / placed.lanes - LANE_GAP
  const cellWidth = Math.max(30, Math.min(widthPixels < WIDE ? CELL_MAX : WIDE_CELL_MAX, room))
  const words = zones.map((zone) => wordsOf(zone, cellWidth))
  const cellHeight = 11 + TEXT_LINE * Math.max(...words.map(({ length }) => length))
  const paper: Paper = { ...placed, zones, width: widthPixels, left, cellWidth, cellHeight, words, meaning: valueMeaning }
  const ways = paths.map((path, index) => `<g data-way="${index}">${wayMark(path, paper, back.indexOf(path))}</g>`)
  const foot = footMarks(paper, paths)
  const title = 'Map of the line'
  const description = mapWords(zones, paths, valueMeaning)
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="lw-plan" viewBox="0 0 ${px(widthPixels)} ${px(foot.bottom)}" width="${px(widthPixels)}" height="${px(foot.bottom)}" role="img" aria-labelledby="${id}-title ${id}-desc" font-family="system-ui, sans-serif" color="${colour('ink')}" fill="currentColor">`,
    `<title id="${id}-title">${escapeXml(title)}</title><desc id="${id}-desc">${escapeXml(description)}</desc>`,
    ...ways,
    ...zones.map((_, zone) => cellMark(zone, paper)),
    foot.svg,
    '</svg>',
  ].join('\n')
  return { svg, title, description, toScale: false, note: null }
}

const xOf = (zone: number, { lane, left, cellWidth }: Paper): number => left + lane[zone]! * (cellWidth + LANE_GAP)
/** upper edge of the cell; above the first row there is room for an arrow from the store */
const yOf = (zone: number, { row, cellHeight }: Paper): number => 30 + row[zone]! * (cellHeight + BETWEEN)

function wordsOf({ name, station, label, carrier }: PlanZone, cellWidth: number): string[] {
  const beside = carrier !== undefined ? CARRIER_ROOM : label === null ? 0 : textPixels(label, SIZE)
  return wrapWords(station === null ? name : `${name} ${keyedTitle(station)}`, cellWidth - 18 - beside, SIZE, LINES_MAX)
}

function cellMark(zone: number, paper: Paper): string {
  const { station, transfer, value, label, carrier, starts } = paper.zones[zone]!
  const { ground, text } = value === null ? { ground: colour('paper'), text: colour('ink') } : shade(value)
  const [x, y, width, height] = [xOf(zone, paper), yOf(zone, paper), paper.cellWidth, paper.cellHeight]
  const lines = paper.words[zone]!
  const first = y + height / 2 + 4 - ((lines.length - 1) * TEXT_LINE) / 2
  const plate = { x: x + width - CARRIER_ROOM / 2, y: y + height / 2 + 4 }
  return [
    `<g data-zone="${zone}"><title>${escapeXml(zoneWords(paper.zones[zone]!, paper.meaning))}</title>`,
    `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" rx="2" fill="${ground}" stroke="currentColor" stroke-width="${station === null ? '0.8' : '2'}"/>`,
    transfer
      ? `<path d="M${px(x)} ${px(y)}l8 8M${px(x + width)} ${px(y)}l-8 8M${px(x)} ${px(y + height)}l8 -8M${px(x + width)} ${px(y + height)}l-8 -8" fill="none" stroke="${text}" stroke-width="0.8"/>`
      : '',
    starts === true ? startMark({ x: x + 6, y: y + 6 }, START_SIZE) : '',
    ...lines.map((line, index) => textAt(line, x + 10, first + index * TEXT_LINE, { size: SIZE, fill: text, bold: station !== null })),
    ...(carrier === undefined
      ? []
      : [carrierMark(carrier, plate), textAt(carrier, plate.x, plate.y, { size: SIZE, anchor: 'middle', fill: colour('paper') })]),
    label === null || carrier !== undefined
      ? ''
      : textAt(label, x + width - 10, y + height / 2 + 4, { size: SIZE, anchor: 'end', fill: text, bold: true }),
    '</g>',
  ].join('')
}

/** A way as a line with an arrow at its end; by hand: dashed. */
function wayMark({ from, to, manual = false, takes = null }: MapPath, paper: Paper, track: number): string {
  const middle = (zone: number): number => xOf(zone, paper) + paper.cellWidth / 2
  const top = (zone: number): number => yOf(zone, paper)
  const bottom = (zone: number): number => top(zone) + paper.cellHeight
  const line = (d: string): string =>
    `<path d="${d}" fill="none" stroke="currentColor" stroke-width="1.2"${manual ? ' stroke-dasharray="4 3"' : ''}/>`
  const head = (x: number, y: number, side: 'down' | 'right'): string => {
    const tips =
      side === 'down'
        ? [
            { x: x - 4, y: y - 6 },
            { x, y },
            { x: x + 4, y: y - 6 },
          ]
        : [
            { x: x - 6, y: y - 4 },
            { x, y },
            { x: x - 6, y: y + 4 },
          ]
    return `<polygon points="${points(tips)}"/>`
  }
  const says = (x: number, y: number, anchor: 'start' | 'end' = 'start'): string =>
    takes === null ? '' : textAt(takes, x, y, { size: SIZE, anchor, fill: colour('quiet') })
  if (from < 0) return line(`M${px(middle(to))} ${px(top(to) - 13)}V${px(top(to))}`) + head(middle(to), top(to), 'down')
  if (to < 0) {
    // to the side: below the cell the way on and the ways back pass
    const [x, y] = [xOf(from, paper) + paper.cellWidth, top(from) + paper.cellHeight * 0.7]
    return line(`M${px(x)} ${px(y)}H${px(x + OUT)}`) + head(x + OUT, y, 'right') + says(x, bottom(from) + 12, 'end')
  }
  if (track >= 0) {
    const x = paper.left - 14 - (track % TRACKS_MAX) * TRACK
    const y2 = top(to) + paper.cellHeight * 0.3
    const end = `H${px(x)}V${px(y2)}H${px(xOf(to, paper))}`
    // past other lanes it goes below their cells, never behind them
    const start =
      paper.lane[from] === 0
        ? `M${px(xOf(from, paper))} ${px(top(from) + paper.cellHeight * 0.7)}`
        : `M${px(middle(from) - 16)} ${px(bottom(from))}V${px(bottom(from) + BELOW)}`
    return line(start + end) + head(xOf(to, paper), y2, 'right') + says(middle(from) + 8, bottom(from) + 12)
  }
  if (paper.row[to]! === paper.row[from]! + 1) {
    const [x1, x2] = [middle(from), middle(to)]
    const half = (bottom(from) + top(to)) / 2
    const d =
      x1 === x2 ? `M${px(x1)} ${px(bottom(from))}V${px(top(to))}` : `M${px(x1)} ${px(bottom(from))}V${px(half)}H${px(x2)}V${px(top(to))}`
    return line(d) + head(x2, top(to), 'down') + says(x2 + 8, x1 === x2 ? top(to) - 4 : half - 3)
  }
  // past other rows: in the gap right of the lane further right
  const lane = Math.max(paper.lane[from]!, paper.lane[to]!)
  const x = paper.left + (lane + 1) * (paper.cellWidth + LANE_GAP) - LANE_GAP / 2
  const [y1, y2] = [bottom(from) + 7, top(to) - 7]
  const start = middle(from) + 10
  return (
    line(`M${px(start)} ${px(bottom(from))}V${px(y1)}H${px(x)}V${px(y2)}H${px(middle(to) + 10)}V${px(top(to))}`) +
    head(middle(to) + 10, top(to), 'down') +
    says(middle(to) - 6, top(to) - 3, 'end')
  )
}

function footMarks(paper: Paper, paths: readonly MapPath[]): { svg: string; bottom: number } {
  const parts: string[] = []
  let y = 30 + paper.rows * (paper.cellHeight + BETWEEN) + 12
  const quiet = { size: SIZE, fill: colour('quiet') }
  const write = (text: string, indent: number): void => {
    for (const words of wrapWords(text, paper.width - indent - EDGE, SIZE, 4)) {
      parts.push(textAt(words, indent, y + 10, quiet))
      y += LINE_PIXELS
    }
  }
  if (paper.meaning !== null && paper.zones.some(({ value }) => value !== null)) {
    SHADES.forEach((value, index) => {
      const x = px(EDGE + index * 14)
      parts.push(
        `<rect x="${x}" y="${px(y)}" width="14" height="12" fill="${shade(value).ground}" stroke="currentColor" stroke-width="0.6"/>`,
      )
    })
    write(`Shade, and number in the cell: ${paper.meaning}`, EDGE + SHADES.length * 14 + 8)
    y += 4
  }
  const signs = [
    'Not to scale. Travel is downwards but for ways back, at the left.',
    ...(paper.zones.some(({ transfer }) => transfer) ? ['Crossed corners: transfer.'] : []),
    ...(paths.some(({ manual }) => manual === true) ? ['Dashed: by hand.'] : []),
    ...carrierSigns(paper.zones),
    ...(paths.some(({ from, to }) => from < 0 || to < 0) ? ['A short arrow without a zone: from or to the store.'] : []),
  ]
  write(signs.join(' '), EDGE)
  return { svg: parts.join('\n'), bottom: y + EDGE }
}

/**
 * The text alternative of a map, without the drawing.
 *
 * @param meaning  of shade and label; null: nothing is shaded
 * @example mapWords(['Z1', 'Z2'].map((name) => ({ name, lengthMetres: 1, turn: null, transfer: false, station: null, value: null, label: null })), [], null) // => 'A line of 2 zones and 0 paths, not to scale. There are no stations.'
 */
export function mapWords(zones: readonly PlanZone[], paths: readonly MapPath[], meaning: string | null): string {
  const stations = zones.flatMap(({ name, station }) => (station === null ? [] : [`${keyedTitle(station)} in ${name}`]))
  const several = (end: 'from' | 'to'): string[] =>
    zones.flatMap(({ name }, zone) => (paths.filter((path) => path[end] === zone).length > 1 ? [name] : []))
  const [splits, merges] = [several('from'), several('to')]
  const fullest = zones.filter(({ value }) => value !== null).toSorted((a, b) => b.value! - a.value!)[0]
  return [
    `A line of ${zones.length} zones and ${paths.length} paths, not to scale.`,
    stations.length === 0 ? 'There are no stations.' : `Stations: ${stations.join(', ')}.`,
    ...carriersOn(zones),
    ...(splits.length === 0 ? [] : [`Several ways out: ${splits.join(', ')}.`]),
    ...(merges.length === 0 ? [] : [`Several ways in: ${merges.join(', ')}.`]),
    ...(fullest === undefined || meaning === null
      ? []
      : [`Highest ${meaning}: ${fullest.name}${fullest.label === null ? '' : `, ${fullest.label}`}.`]),
  ].join(' ')
}
