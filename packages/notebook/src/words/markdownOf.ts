/** signs that Markdown obeys, wherever they stand; a code between backquotes is left as it is */
const SIGNS = /`[^`]*`|[\\*_[\]<>~|]|^[#+-](?=\s)/g

/**
 * A plain sentence as Markdown, so that no name in it is obeyed; what is to be typed stays between backquotes.
 *
 * @example markdownOf('S_1 *left*: `loopwright run`') // => 'S\\_1 \\*left\\*: `loopwright run`'
 */
export function markdownOf(sentence: string): string {
  return sentence.replace(SIGNS, (sign) => (sign.startsWith('`') ? sign : `\\${sign}`))
}
