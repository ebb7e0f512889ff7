/**
 * Text broken at blanks into lines of at most `columns` characters; a longer word stands alone. Line ends in the text are kept, and "5 %", "± 1" and "2 s" stay whole.
 *
 * @param columns  count, > indent
 * @param indent   blanks before every line but the first
 * @example wrap('one two three', 8) // => 'one two\nthree'
 */
export function wrap(text: string, columns: number, indent = 0): string {
  return text
    .split('\n')
    .map((line) => wrapLine(line, columns, indent))
    .join('\n')
}

function wrapLine(line: string, columns: number, indent: number): string {
  const lines: string[] = []
  let current = ''
  for (const word of line.split(/(?<!±)[ \t]+(?!%|(?<=\d[ \t]+)(?:s|min|h|m|m\/min)(?![\p{L}\d]))/u)) {
    const candidate = current === '' ? word : `${current} ${word}`
    if (current.trim() !== '' && [...candidate].length > columns) {
      lines.push(current)
      current = ' '.repeat(indent) + word
    } else {
      current = candidate
    }
  }
  lines.push(current)
  return lines.join('\n')
}
