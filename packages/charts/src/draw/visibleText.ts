/** control characters but the line end and the tab, signs that turn the direction of text around, and line ends that only some programs take for one */
const UNSEEN = /(?![\n\t])[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu

/**
 * Text whose control characters are told by their numbers, so that nothing but text reaches a terminal. In JSON the number means the same character.
 *
 * @example visibleText('a\u001b[2Jb\u009b') // => 'a\\u001b[2Jb\\u009b'
 */
export function visibleText(text: string): string {
  return text.replace(UNSEEN, escaped)
}

/**
 * The same on one line: for names, titles and questions, which a line end would make look like something else.
 *
 * @example visibleLine('Load\n  done:\u0007 nothing') // => 'Load done:\\u0007 nothing'
 */
export function visibleLine(text: string): string {
  return visibleText(text.replace(/[\t ]*(?:\r\n|[\n\t\v\f\r\u0085\u2028\u2029])\s*/g, ' '))
}

const escaped = (sign: string): string => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`
