/** Tables wider than their place can be reached by the keyboard, so that it can scroll them; others are no stop on the way. */

export function watchScrollers(): void {
  const observer = new ResizeObserver((entries) => {
    for (const { target } of entries) mark(target.closest<HTMLElement>('.scroll'))
  })
  const watch = (root: ParentNode): void => {
    for (const place of root.querySelectorAll<HTMLElement>('.scroll')) {
      observer.observe(place)
      mark(place)
    }
  }
  watch(document)
  // tables are put in anew where another view is shown
  new MutationObserver((changes) => {
    for (const { addedNodes } of changes)
      for (const node of addedNodes)
        if (node instanceof Element && node.closest('.scroll, .numbers, .tablecell')) watch(node.parentElement!)
  }).observe(document.body, { childList: true, subtree: true })
}

function mark(place: HTMLElement | null): void {
  if (place === null) return
  if (place.scrollWidth > place.clientWidth + 1) {
    place.tabIndex = 0
    place.setAttribute('role', 'region')
    place.setAttribute('aria-label', place.querySelector('caption')?.textContent ?? 'Table')
  } else for (const name of ['tabindex', 'role', 'aria-label']) place.removeAttribute(name)
}
