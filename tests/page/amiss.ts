/** What is wrong with how a page lies, measured by boxes in a browser: each fault in words. */
import type { Page } from 'playwright-core'

/**
 * Runs in the page. Texts of pictures that reach out of them, or lie on another one by more than two pixels both ways; cells and large figures whose
 * text is wider than they are; what makes the page scroll sideways.
 */
export const MEASURE = `(() => {
  const seen = (element) => element.getClientRects().length > 0
  const wide = (box) => box.right - box.left
  const named = (element) => {
    const holder = element.closest('figure, .tablecell, section[id]')
    return (holder === null || holder.id === '' ? '' : holder.id + ': ') + '“' + element.textContent.trim().replace(/\\s+/g, ' ').slice(0, 40) + '”'
  }
  const drawn = [...document.querySelectorAll('svg')].filter((svg) => svg.getBoundingClientRect().width > 1)
  const texts = drawn.flatMap((svg) => {
    const edge = svg.getBoundingClientRect()
    const all = [...svg.querySelectorAll('text')].filter((text) => seen(text)).map((text) => ({ text, box: text.getBoundingClientRect() }))
    const cut = all.filter(({ box }) => box.left < edge.left - 2 || box.right > edge.right + 2 || box.top < edge.top - 2 || box.bottom > edge.bottom + 2)
    // letters do not fill their box: a fifth above and below is free
    const high = (box) => ({ top: box.top + box.height * 0.2, bottom: box.bottom - box.height * 0.2 })
    const meet = (a, b) => a.left < b.right - 2 && b.left < a.right - 2 && high(a).top < high(b).bottom && high(b).top < high(a).bottom
    const over = all.flatMap((a, index) => all.slice(index + 1).filter((b) => meet(a.box, b.box)).map((b) => named(a.text) + ' lies on ' + named(b.text)))
    return [...cut.map(({ text }) => named(text) + ' reaches out of its picture'), ...over]
  })
  const held = [...document.querySelectorAll('td, th, .figures dd, .figures dt, .choice span:not(.hidden), button, .handout li, figcaption')].filter(seen)
  const narrow = held.filter((element) => element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0 && getComputedStyle(element).display !== 'inline')
  const root = document.documentElement
  const sideways = root.scrollWidth > root.clientWidth + 1 ? ['the page scrolls sideways: ' + root.scrollWidth + ' of ' + root.clientWidth] : []
  return [...texts, ...narrow.map((element) => named(element) + ' is wider than its place'), ...sideways]
})()`

export async function amiss(page: Page): Promise<string[]> {
  return await page.evaluate<string[]>(MEASURE)
}

/** What is seen of the page's own answer without scrolling: large figures, first sentence, picture, promise, limit. */
const SEEN_FIRST = '.answer .figures, .answer .first, .answer .lead svg, .answer .asides section'

/**
 * Parts of the page's own answer, where it opens the page, that reach below the screen before anybody scrolls, by more than their last pixel.
 *
 * @param parts  selector. Default: all that the first screen shows where it is wide
 */
export async function belowScreen(page: Page, parts = SEEN_FIRST): Promise<string[]> {
  return await page.evaluate<string[]>(`(() => {
  scrollTo(0, 0)
  const answer = document.querySelector('main > .answer')
  const drawn = answer === null ? [] : [...answer.querySelectorAll(${JSON.stringify(parts)})].filter((part) => part.getClientRects().length > 0)
  const low = drawn.filter((part) => part.getBoundingClientRect().bottom > innerHeight + 1)
  return low.map((part) => part.tagName.toLowerCase() + ' ends at ' + Math.round(part.getBoundingClientRect().bottom) + ' of ' + innerHeight + ': “' + part.textContent.trim().slice(0, 40) + '”')
})()`)
}
