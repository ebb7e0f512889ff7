/** A drawing as SVG text: pure, the same text for the same data, without a browser to measure anything. */
import { hatchingDefs } from '../draw/hatching.ts'
import { escapeXml, px } from '../draw/svg.ts'
import { FONT, type Look } from '../draw/theme.ts'
import { acrossAxis, acrossRoom, labelsWidth, TITLE_ROW, upAxis, upTicks } from './axes.ts'
import type { Drawing } from './drawing.ts'
import { inkAttributes, rimAttributes } from './ink.ts'
import { keyPieces } from './key.ts'
import { markPieces } from './marks.ts'
import type { Piece } from './piece.ts'
import { scaleOf } from './scale.ts'

/** How wide a drawing becomes, and in which look. */
export interface DrawingOptions {
  /** pixels; the picture is made for this width */
  readonly widthPixels: number
  /** `page`: colours by the variables of `themeCss`. Default: page */
  readonly look?: Look
}

/** pixels to the right of the area, so that the label of the last tick has room */
const RIGHT = 8
const TOP = 4
/** narrower pictures cannot be read */
const LEAST = 200

/**
 * One `<svg>` element; what it shows is said by the element around it.
 *
 * @throws RangeError  if it would be narrower than 200 pixels, or an axis has no length
 * @example drawingSvg({ heightPixels: 50, across: { from: 0, to: 1, title: '' }, up: { from: 0, to: 1, title: '' }, marks: [] }, { widthPixels: 300 }).slice(0, 4) // => '<svg'
 */
export function drawingSvg(drawing: Drawing, { widthPixels, look = 'page' }: DrawingOptions): string {
  if (!(widthPixels >= LEAST)) throw new RangeError(`a picture ${widthPixels} pixels wide cannot be read; give ${LEAST} or more`)
  const ticks = upTicks(drawing.up, widthPixels)
  const key = keyPieces(drawing.key ?? [], widthPixels)
  const { above, below } = acrossRoom(drawing)
  const top = TOP + key.heightPixels + (drawing.up.title === '' ? 0 : TITLE_ROW) + above
  const bottom = top + drawing.heightPixels
  const x = scaleOf(drawing.across, labelsWidth(ticks), widthPixels - (drawing.rightPixels ?? RIGHT))
  const y = scaleOf(drawing.up, bottom, top)
  const pieces = [
    ...key.pieces,
    ...upAxis(drawing, ticks, x, y),
    ...acrossAxis(drawing, x, y),
    ...drawing.marks.flatMap((mark) => markPieces(mark, x, y, widthPixels)),
  ]
  const height = bottom + below
  const ground = look === 'page' ? '' : `<rect width="${px(widthPixels)}" height="${px(height)}"${inkAttributes('paper', look)}/>`
  const choice = drawing.choice === undefined ? '' : ` data-choice="${escapeXml(drawing.choice)}"`
  const area = drawing.followed === true ? ` data-area="${px(x.fromPixels)} ${px(x.toPixels)} ${px(top)} ${px(bottom)}"` : ''
  return `<svg xmlns="http://www.w3.org/2000/svg" class="lw-drawing" width="${px(widthPixels)}" height="${px(height)}" viewBox="0 0 ${px(widthPixels)} ${px(height)}" font-family="${FONT}"${choice}${area}>${look === 'print' ? hatchingDefs() : ''}${ground}${grouped(pieces, look)}</svg>`
}

/** Pieces of one paint that follow each other are painted together. */
function grouped(pieces: readonly Piece[], look: Look): string {
  const groups: { paint: string; parts: string[] }[] = []
  for (const { ink, rim, svg } of pieces) {
    const paint = inkAttributes(ink, look) + (rim === undefined ? '' : rimAttributes(rim, look))
    const last = groups.at(-1)
    if (last?.paint === paint) last.parts.push(svg)
    else groups.push({ paint, parts: [svg] })
  }
  return groups.map(({ paint, parts }) => `<g${paint}>${parts.join('')}</g>`).join('')
}
