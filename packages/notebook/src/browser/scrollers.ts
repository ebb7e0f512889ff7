/** Tables wider than their place can be reached by the keyboard, so that it can scroll them; others are no stop on the way. */

export function watchScrollers(): void {
  // told of each place when it is first laid out, too; all are measured before any is touched, as each change would have the page laid out anew
  const observer = new ResizeObserver((entries) => {
    const places = new Set(entries.flatMap(({ target }) => target.closest<HTMLElement>('.scroll') ?? []))
    const measured = [...places].map((place) => ({ place, scrolls: place.scrollWidth > place.clientWidth + 1 }))
    for (const { place, scrolls } of measured) mark(place, scrolls)
  })
  const watch = (root: ParentNode): void => {
    for (const place of root.querySelectorAll<HTMLElement>('.scroll')) observer.observe(place)
  }
  watch(document)
  // tables are put in anew where another view is shown
  new MutationObserver((changes) => {
    // one that was put in and taken out again at once has no place any more
    for (const { addedNodes } of changes)
      for (const node of addedNodes)
        if (node instanceof Element && node.isConnected && node.closest('.scroll, .numbers, .tablecell')) watch(node.parentElement!)
  }).observe(document.body, { childList: true, subtree: true })
}

function mark(place: HTMLElement, scrolls: boolean): void {
  if (scrolls) {
    place.tabIndex = 0
    place.setAttribute('role', 'region')
    place.setAttribute('aria-label', place.querySelector('caption')?.textContent ?? 'Table')
  } else for (const name of ['tabindex', 'role', 'aria-label']) place.removeAttribute(name)
}
