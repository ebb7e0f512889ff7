/** Terminal and page say the same. */
import type { Judged } from '../rules.ts'
import { cellsOf, notesOf, paragraphsOf, sentencesOf } from '../textParts.ts'

/** Every sentence and every cell of the terminal stands on the page. */
export function textOnPage({ text, page }: Judged): string[] {
  if (page === null) return []
  const all = flat(page.all)
  return [...sentencesOf(text), ...notesOf(text), ...cellsOf(text)].map(bare).filter((part) => !all.includes(part))
}

/** The page's answer, how sure and warnings stand in the terminal. */
export function pageHeadInText({ text, page }: Judged): string[] {
  if (page === null) return []
  const all = flat([...paragraphsOf(text), ...notesOf(text)].map(bare).join(' '))
  return page.head
    .flatMap((paragraph) => sentencesOf(paragraph))
    .map(bare)
    .filter((sentence) => !all.includes(sentence))
}

/** Without the signs by which a terminal shows a list, a warning, a chosen row. */
const bare = (part: string): string =>
  flat(part)
    .replace(/^(- |> |Warning: )|:$/g, '')
    .trim()

const flat = (text: string): string => text.replace(/\*\*|`/g, '').replace(/\s+/g, ' ')
