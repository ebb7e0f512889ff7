import { wrap } from './wrap.ts'

/**
 * Markdown as a terminal shows it: without marks of emphasis, links as their text, headings on a line of their own, paragraphs wrapped.
 * For the little Markdown that notebooks use; what it does not know stays as written.
 *
 * @param columns  characters per line
 * @example plainText('## Result\nWith **10** carriers', 80) // => 'Result\n\nWith 10 carriers'
 */
export function plainText(markdown: string, columns: number): string {
  const blocks: string[] = []
  let paragraph: string[] = []
  const close = (): void => {
    if (paragraph.length > 0) blocks.push(wrap(bare(paragraph.join(' ')), columns))
    paragraph = []
  }
  for (const line of dedent(markdown).split('\n')) {
    const heading = /^#{1,6}\s+(.*)$/.exec(line)
    const item = /^\s*(?:[-*]|\d+\.)\s+(.*)$/.exec(line)
    if (heading) {
      close()
      blocks.push(bare(heading[1]!))
    } else if (item) {
      close()
      blocks.push(wrap(`- ${bare(item[1]!)}`, columns, 2))
    } else if (line.trim() === '') close()
    else paragraph.push(line.trim())
  }
  close()
  return blocks
    .map((block, index) => (index > 0 && !(block.startsWith('- ') && blocks[index - 1]!.startsWith('- ')) ? `\n${block}` : block))
    .join('\n')
}

/** Without the indent that all lines share (of those that are not blank, nor the first where text begins in it), nor blank lines at the ends. */
export function dedent(text: string): string {
  const lines = text.trimEnd().split('\n')
  const first = lines[0]!.trim() === '' ? 0 : 1
  const indents = lines.flatMap((line, index) => (index < first || line.trim() === '' ? [] : [/^ */.exec(line)![0].length]))
  const shared = indents.length === 0 ? 0 : Math.min(...indents)
  return lines
    .map((line, index) => (index < first ? line : line.slice(shared)))
    .join('\n')
    .replace(/^\s*\n/, '')
}

/** begins the code points for private use that stand in for escaped signs */
const HIDDEN = 0xe000

function bare(text: string): string {
  return text
    .replace(/\\([\\*_[\]<>~|#+-])/g, (_, sign: string) => String.fromCodePoint(HIDDEN + sign.codePointAt(0)!))
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/(\*\*|__)(.+?)\1/g, '$2')
    .replace(/(?<![\w*])\*([^*\s][^*]*?)\*(?![\w*])/g, '$1')
    .replace(/`([^`]+)`/g, '$1')
    .replace(/[\ue000-\ue07f]/g, (sign) => String.fromCodePoint(sign.codePointAt(0)! - HIDDEN))
}
