/** What a stream of text may look like: how wide, and whether with colours. */
import type { TerminalOptions } from '@loopwright/notebook'
import type { Stream } from './shell.ts'

/** where a stream is no terminal, or does not say */
const COLUMNS = 80
const NARROWEST = 60
/** longer lines are hard to read */
const WIDEST = 120

/** Of the environment, those that speak of colours. */
export interface ColourWishes {
  readonly NO_COLOR?: string | undefined
  readonly FORCE_COLOR?: string | undefined
  readonly TERM?: string | undefined
}

/**
 * True where colours may be used: on a terminal, unless the environment says otherwise. `FORCE_COLOR` decides for itself where it is set, also in a file:
 * `0` and `false` are no, all else is yes. `NO_COLOR` with any text is no.
 *
 * @see no-color.org and force-color.org: an empty value says nothing; that the second goes before the first: the documentation of Node, of `tty`
 * @example colourWanted({ NO_COLOR: '1' }, true) // => false
 */
export function colourWanted({ NO_COLOR, FORCE_COLOR, TERM }: ColourWishes, isTerminal: boolean): boolean {
  if ((FORCE_COLOR ?? '') !== '') return FORCE_COLOR !== '0' && FORCE_COLOR !== 'false'
  return isTerminal && (NO_COLOR ?? '') === '' && TERM !== 'dumb'
}

/**
 * Columns that a text may take.
 *
 * @param columns  of the terminal; undefined: it is none, or does not say
 * @returns        60 … 120
 * @example columnsOf(200) // => 120
 */
export function columnsOf(columns: number | undefined): number {
  return columns === undefined || columns <= 0 ? COLUMNS : Math.min(WIDEST, Math.max(NARROWEST, Math.floor(columns)))
}

/** What cells may look like on a stream. */
export const lookOf = ({ colour, columns, isTerminal }: Stream): TerminalOptions => ({ colour, columns, bars: isTerminal })
