/** Charts of rows: a bar or a dot for each, its name above it at the left and its number at the right. */
import type { Axis, Words } from './drawing.ts'

/** pixels; mark and the line of text above it */
export const STEP_PIXELS = 40
/** where the text stands within its step, from above */
const WORDS_AT = 0.26

/**
 * The upright axis of so many rows, from above, without labels.
 *
 * @example rowAxis(3).from // => 3
 */
export function rowAxis(rows: number): Axis {
  return { from: Math.max(1, rows), to: 0, title: '', ticks: [] }
}

/** Name and number of a row; a long name is shortened so that the number has room. */
export function rowWords(row: number, name: string, text: string, strong = false): Words[] {
  const y = row + WORDS_AT
  const ink = strong ? 'strong' : 'words'
  return [
    { mark: 'words', x: 'from', y, text: name, ink, beside: text },
    { mark: 'words', x: 'to', y, text, ink, align: 'end' },
  ]
}

/**
 * A bar in a row, below its words: from and to, from above.
 *
 * @example barIn(2) // => [2.52, 2.92]
 */
export const barIn = (row: number): readonly [number, number] => [row + 0.52, row + 0.92]

/**
 * The middle of such a bar, where a dot stands.
 *
 * @example dotIn(2) // => 2.72
 */
export const dotIn = (row: number): number => row + 0.72
