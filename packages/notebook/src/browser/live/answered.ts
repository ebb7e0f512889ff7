/** The count that the answer of the page names, where the file has another one: said beside the field, and set by one press. */
import type { Row } from './rows.ts'

/**
 * @param named  number of carriers that the answer names first; null: none
 */
export function showAnswered(place: HTMLElement, rows: readonly Row[], named: number | null): void {
  const row = rows.find(({ input: { does } }) => does.kind === 'path' && does.path === 'carriers.count')
  if (row === undefined || named === null || row.input.file === String(named)) return
  row.note(`answer: ${named}`)
  const set = Object.assign(document.createElement('button'), { type: 'button', textContent: `As the answer: ${named}` })
  set.addEventListener('click', () => row.choose(String(named)))
  place.querySelector('[data-act="back"]')!.before(set)
}
