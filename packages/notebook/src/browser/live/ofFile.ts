/** What of the page goes on telling the line as it is written, while something else is set: it says so. */

/** pictures and tables outside the controls, and the answer */
const TOLD = '.answer, main figure, main .tablecell, main .leadnumbers'

/**
 * @param set    something is set that is not in the file
 * @param curve  id of the cell that follows what is set; null: none does
 */
export function markFileParts(set: boolean, curve: string | null): void {
  for (const part of document.querySelectorAll<HTMLElement>(TOLD)) {
    if (part.closest('.live, .replay') !== null || part.id === curve || part.id === `${curve}-numbers`) continue
    const mark = part.querySelector<HTMLElement>(':scope > .offile') ?? made(part)
    mark.hidden = !set
  }
}

function made(part: HTMLElement): HTMLElement {
  const mark = document.createElement('p')
  mark.className = 'offile'
  mark.textContent = 'Of the file, not of the change'
  part.style.position = 'relative'
  part.prepend(mark)
  return mark
}
