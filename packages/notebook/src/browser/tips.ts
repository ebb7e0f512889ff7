/** What a mark says of itself: where it is pointed at, or tapped. The same numbers stand in the table of the figure. */

/** pixels between the pointer and the words, and free at the edge of the window */
const APART = 14
const EDGE = 8

export function showTips(): void {
  const tip = document.createElement('div')
  tip.className = 'tip'
  tip.setAttribute('aria-hidden', 'true')
  document.body.append(tip)
  const hide = (): void => tip.classList.remove('visible')
  const show = (event: PointerEvent): void => {
    const mark = (event.target as Element).closest?.('[data-tip]')
    if (!mark) {
      hide()
      return
    }
    tip.textContent = mark.getAttribute('data-tip')
    tip.classList.add('visible')
    const { width, height } = tip.getBoundingClientRect()
    const left = Math.max(EDGE, Math.min(event.clientX + APART, document.documentElement.clientWidth - width - EDGE))
    const above = event.clientY - height - APART
    tip.style.left = `${left}px`
    tip.style.top = `${above < EDGE ? event.clientY + APART : above}px`
  }
  document.addEventListener('pointermove', (event) => {
    if (event.pointerType === 'mouse') show(event)
  })
  document.addEventListener('pointerdown', show)
  document.addEventListener('scroll', hide, { passive: true })
  addEventListener('keydown', (event) => {
    if (event.key === 'Escape') hide()
  })
}
