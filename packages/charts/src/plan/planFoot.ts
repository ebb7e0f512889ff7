/** What stands under a plan: what the shades mean, how long a metre is, and why it is a ring. */
import { niceStep } from '../draw/window.ts'
import { LINE_PIXELS } from './planNames.ts'
import { carrierSigns, type PlanZone } from './planZone.ts'
import { colour, px, shade, textAt } from '../draw/svg.ts'
import { textPixels, wrapWords } from '../draw/wrapWords.ts'

export interface Foot {
  /** pixels */
  readonly width: number
  /** first pixel that it may take */
  readonly from: number
  /** pixels per metre */
  readonly scale: number
  /** what shade and label mean; null: nothing is shaded */
  readonly meaning: string | null
  /** the cells carry their numbers */
  readonly labels: boolean
  readonly note: string | null
}

/** pixels, free on both sides */
export const EDGE = 6
const SIZE = 12
const SHADES = [0, 0.25, 0.5, 0.75, 1]

/**
 * Lines of small text with their signs.
 *
 * @returns  SVG text, and the pixel below its last line
 */
export function planFoot(zones: readonly PlanZone[], { width, from, scale, meaning, labels, note }: Foot): { svg: string; bottom: number } {
  const parts: string[] = []
  let y = from
  const quiet = { size: SIZE, fill: colour('quiet') }
  const write = (text: string, indent: number): void => {
    for (const line of wrapWords(text, width - indent - EDGE, SIZE, 4)) {
      parts.push(textAt(line, indent, y + 10, quiet))
      y += LINE_PIXELS
    }
  }
  if (meaning !== null && zones.some(({ value }) => value !== null)) {
    SHADES.forEach((value, index) => {
      const x = px(EDGE + index * 14)
      parts.push(
        `<rect x="${x}" y="${px(y)}" width="14" height="12" fill="${shade(value).ground}" stroke="currentColor" stroke-width="0.6"/>`,
      )
    })
    write(`${labels ? 'Shade, and number in the cell' : 'Shade'}: ${meaning}`, EDGE + SHADES.length * 14 + 8)
    y += 4
  }
  const metres = niceStep(60 / scale, 1)
  const long = metres * scale
  parts.push(`<path d="M${px(EDGE)} ${px(y + 2)}v8h${px(long)}v-8" fill="none" stroke="${colour('quiet')}"/>`)
  parts.push(textAt(`${metres} m`, EDGE + long + 8, y + 10, quiet))
  if (zones.some(({ transfer }) => transfer))
    parts.push(textAt('crossed: transfer', EDGE + long + 20 + textPixels(`${metres} m`, SIZE), y + 10, quiet))
  y += LINE_PIXELS
  for (const sign of carrierSigns(zones)) write(sign, EDGE)
  if (note !== null) {
    y += 4
    write(note, EDGE)
  }
  return { svg: parts.join('\n'), bottom: y }
}
