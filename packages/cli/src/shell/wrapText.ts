/**
 * Text in lines of at most so many characters; a line that begins with blanks keeps them, words are never broken.
 *
 * @param columns  characters per line
 * @example wrapText('one two three', 8) // => 'one two\nthree'
 */
export function wrapText(text: string, columns: number): string {
  return text
    .split('\n')
    .map((line) => wrapLine(line, columns))
    .join('\n')
}

function wrapLine(line: string, columns: number): string {
  if ([...line].length <= columns) return line
  const indent = /^ */.exec(line)![0]
  const lines: string[] = []
  let now = indent
  for (const word of line.trim().split(/ +/)) {
    if (now.length > indent.length && [...now].length + 1 + [...word].length > columns) {
      lines.push(now)
      now = indent
    }
    now += (now.length > indent.length ? ' ' : '') + word
  }
  return [...lines, now].join('\n')
}
