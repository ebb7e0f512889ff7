import MarkdownIt from 'markdown-it'
import { dedent } from '../terminal/plainText.ts'
import { withUnits } from './withUnits.ts'

export interface MarkdownWriter {
  readonly write: (markdown: string) => string
  /** level of the last heading written, 1 at the start: that is the page's own */
  readonly level: () => number
}

/**
 * Markdown to HTML, part after part of one page. HTML in it is shown as text, not obeyed.
 * Headings keep their order over the whole page: the highest is level 2, and none is skipped on the way down.
 */
export function markdownWriter(): MarkdownWriter {
  const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false })
  markdown.renderer.rules.table_open = () => '<div class="scroll"><table>\n'
  markdown.renderer.rules.table_close = () => '</table></div>\n'
  markdown.core.ruler.push('units', (state) => {
    for (const token of state.tokens)
      for (const part of token.children ?? []) if (part.type === 'text') part.content = withUnits(part.content)
  })
  let level = 1
  return {
    level: () => level,
    write: (text) => {
      const tokens = markdown.parse(dedent(text), {})
      for (const token of tokens) {
        if (token.type === 'heading_open') level = Math.min(Math.max(2, Number(token.tag.slice(1))), level + 1)
        if (token.type === 'heading_open' || token.type === 'heading_close') token.tag = `h${level}`
      }
      return markdown.renderer.render(tokens, markdown.options, {})
    },
  }
}
