/** Small pieces of SVG text. */
import { LIGHT } from './palette.ts'

/** A place on paper: x to the right, y down. */
export interface Point {
  readonly x: number
  readonly y: number
}

/**
 * Text that may stand between tags or in an attribute.
 *
 * @example escapeXml('A & B') // => 'A &amp; B'
 */
export function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (each) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[each]!)
}

/**
 * A colour of the page's look, with that of white paper where the variables are not declared.
 *
 * @example colour('accent') // => 'var(--lw-accent, #b5360a)'
 */
export function colour(name: 'ink' | 'paper' | 'quiet' | 'hairline' | 'accent'): string {
  return `var(--lw-${name}, ${LIGHT[name]})`
}

/**
 * The shade of a value and a readable text colour on it.
 *
 * @param value 0 … 1
 * @example shade(0).ground // => 'var(--lw-ramp-0, #f3f7ff)'
 */
export function shade(value: number): { ground: string; text: string } {
  const step = Math.round(Math.min(1, Math.max(0, value)) * (LIGHT.ramp.length - 1))
  return { ground: `var(--lw-ramp-${step}, ${LIGHT.ramp[step]!})`, text: `var(--lw-on-ramp-${step}, ${LIGHT.onRamp[step]!})` }
}

/**
 * Pixels with at most one decimal, so that the same drawing is the same text everywhere.
 *
 * @example px(1.04) // => '1'
 */
export function px(value: number): string {
  return String(Math.round(value * 10) / 10 + 0)
}

/**
 * @example points([{ x: 0, y: 1.5 }]) // => '0,1.5'
 */
export function points(list: readonly Point[]): string {
  return list.map(({ x, y }) => `${px(x)},${px(y)}`).join(' ')
}

export interface TextLook {
  readonly size: number
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly bold?: boolean
  readonly fill?: string
}

/**
 * One line of text, its baseline at (x, y).
 *
 * @example textAt('62', 10, 20, { size: 12 }) // => '<text x="10" y="20" font-size="12">62</text>'
 */
export function textAt(text: string, x: number, y: number, { size, anchor = 'start', bold = false, fill }: TextLook): string {
  const more = `${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}${bold ? ' font-weight="600"' : ''}${fill === undefined ? '' : ` fill="${fill}"`}`
  return `<text x="${px(x)}" y="${px(y)}" font-size="${size}"${more}>${escapeXml(text)}</text>`
}
