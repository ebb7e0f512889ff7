/** A page that is being written is brought up to date without being loaded again, where words alone have changed. */

/** A page as it was written, its body between `main` and the rest. */
interface Written {
  /** before and behind its main part: style, data, script */
  readonly around: readonly [string, string]
  readonly main: HTMLElement
}

/** what scripts of the page have laid hand on, or know by heart */
const TOUCHED = 'svg, .picture, button, input, select, .scroll'

export interface Patches {
  /**
   * Puts what changed into the page that is shown.
   *
   * @param text  the page as it is written now
   * @returns     false: more than words has changed, and nothing was done
   */
  readonly put: (shown: Document, text: string) => boolean
  /** This page is shown from now on. */
  readonly loaded: (text: string) => void
}

export function pagePatches(): Patches {
  let before: Written | null = null
  return {
    put: (shown, text) => {
      const now = writtenOf(text)
      const changed = before === null || now === null ? null : changedCells(before, now)
      const places = changed?.map(({ id }) => shown.getElementById(id)) ?? []
      if (changed === null || places.includes(null)) return false
      for (const [index, cell] of changed.entries()) places[index]!.replaceWith(shown.importNode(cell, true))
      before = now
      return true
    },
    loaded: (text) => {
      before = writtenOf(text)
    },
  }
}

function writtenOf(text: string): Written | null {
  const [from, to] = [text.indexOf('<main'), text.lastIndexOf('</main>')]
  if (from < 0 || to < from) return null
  const main = new DOMParser().parseFromString(text.slice(from, to), 'text/html').querySelector('main')
  return main === null ? null : { around: [text.slice(0, from), text.slice(to)], main }
}

/** Cells of words that are not as they were; null: something else is not. */
function changedCells(before: Written, now: Written): Element[] | null {
  if (before.around.some((part, index) => part !== now.around[index])) return null
  const [old, fresh] = [partsOf(before.main), partsOf(now.main)]
  if (old.length !== fresh.length) return null
  const changed: Element[] = []
  for (const [index, part] of fresh.entries()) {
    const own = old[index]!
    if (own.holder !== part.holder || own.element.id !== part.element.id) return null
    if (own.element.isEqualNode(part.element)) continue
    if (part.element.id === '' || [own.element, part.element].some((each) => each.querySelector(TOUCHED) !== null)) return null
    changed.push(part.element)
  }
  return changed
}

/** What stands in the page, one after another, and in what: a section, a folded one, or the page itself. */
function partsOf(main: HTMLElement, holder = ''): { readonly element: Element; readonly holder: string }[] {
  return [...main.children].flatMap((element) =>
    element.matches('section.part, details.fold')
      ? partsOf(element as HTMLElement, `${holder} ${(element.cloneNode(false) as Element).outerHTML}`)
      : [{ element, holder }],
  )
}
