import { visibleText } from './visibleText.ts'

/** What a text means to a reader; a terminal may show it by weight and colour. The words say it too. */
export type TextStyle = 'strong' | 'warning' | 'bad' | 'good'

/**
 * ECMA-48 select graphic rendition: bold (1, ended by 22) and three of the eight basic colours, which people see well on white and on black; no yellow, no blue.
 * The colour ends with 39, the default of the terminal.
 */
const CODES: Readonly<Record<TextStyle, readonly [begin: string, end: string]>> = {
  strong: ['1', '22'],
  warning: ['1;35', '22;39'],
  bad: ['1;31', '22;39'],
  good: ['1;32', '22;39'],
}

/**
 * A text in a style, each of its lines by itself; as it is where no colour may be used.
 *
 * @example styledText('gridlock', 'bad', false) // => 'gridlock'
 */
export function styledText(text: string, style: TextStyle, colour: boolean): string {
  if (!colour) return text
  const [begin, end] = CODES[style]
  return text
    .split('\n')
    .map((line) => (line === '' ? line : `\u001b[${begin}m${line}\u001b[${end}m`))
    .join('\n')
}

/** All that is ours among the escape sequences: the styles, and the renewal of a line of progress. */
const OWN = new RegExp(`(\\r\\u001b\\[2K|\\u001b\\[(?:${Object.values(CODES).flat().join('|')})m)`)

/**
 * What may go to a terminal: text, and the sequences of this file; any other control character is told by its number.
 *
 * @example visibleStyled('\u001b[1mgridlock\u001b[22m\u0007') // => '\u001b[1mgridlock\u001b[22m\\u0007'
 */
export function visibleStyled(text: string): string {
  return text
    .split(OWN)
    .map((part, index) => (index % 2 === 1 ? part : visibleText(part)))
    .join('')
}
