import type { Source } from '../tidy/sources.ts'

export interface Block {
  readonly file: string
  /** of the first line inside */
  readonly line: number
  /** what stands behind the opening fence */
  readonly language: string
  readonly text: string
}

/** The fenced blocks of a document. */
export function blocksOf(source: Source): Block[] {
  const blocks: Block[] = []
  let open: { line: number; language: string; lines: string[] } | null = null
  source.text.split('\n').forEach((text, index) => {
    const fence = /^\s*```(\S*)\s*$/.exec(text)
    if (!fence) open?.lines.push(text)
    else if (open === null) open = { line: index + 2, language: fence[1]!, lines: [] }
    else {
      blocks.push({ file: source.file, line: open.line, language: open.language, text: open.lines.join('\n') })
      open = null
    }
  })
  return blocks
}

export interface Link {
  readonly line: number
  readonly target: string
}

/** Links of the form `[words](target)` outside code. */
export function linksOf(source: Source): Link[] {
  let inBlock = false
  return source.text.split('\n').flatMap((text, index) => {
    if (/^\s*```/.test(text)) inBlock = !inBlock
    if (inBlock) return []
    return [...text.replaceAll(/`[^`]*`/g, '').matchAll(/\[[^\]]*\]\(([^)\s]+)\)/g)].map((found) => ({
      line: index + 1,
      target: found[1]!,
    }))
  })
}

/** The anchors of the headings: lower case, punctuation away, blanks to hyphens. */
export function anchorsOf(source: Source): string[] {
  return source.text
    .split('\n')
    .filter((text) => /^#+ /.test(text))
    .map((text) =>
      text
        .replace(/^#+ /, '')
        .toLowerCase()
        .replaceAll(/[^\p{L}\p{N}\s-]/gu, '')
        .trim()
        .replaceAll(/\s/g, '-'),
    )
}
