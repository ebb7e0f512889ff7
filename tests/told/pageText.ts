/** What is read on a page: its text without tags, and what it says at its head. */

export interface PageText {
  /** everything, one blank between words */
  readonly all: string
  /** the paragraphs of answer, how sure and warnings */
  readonly head: readonly string[]
}

export function pageText(html: string): PageText {
  const body = html.slice(html.indexOf('<body')).replace(/<(script|style|noscript|svg|nav)\b.*?<\/\1>/gs, ' ')
  // what a printed page repeats is read once
  // what stands with the answer and the picture beside it are read after it, as in a terminal
  const asides = body
    .replace(/<div class="handout".*?<\/div>/s, '')
    .replace(/<p class="saves">.*?<\/p>/gs, '')
    .replace(/(<div class="asides">.*?<\/div>)(.*)/s, '$2$1')
  const inOrder = asides.replace(/(<section class="answer".*?)(<figure\b.*?<\/figure>)(.*?<\/section>)/s, '$1$3$2')
  return { all: plain(inOrder), head: [...sectionOf(inOrder, 'answer'), ...warningsOf(inOrder)] }
}

function sectionOf(body: string, id: string): string[] {
  const section = new RegExp(`<section[^>]*id="${id}".*?</section>`, 's').exec(body)?.[0] ?? ''
  return paragraphsOf(section)
}

const warningsOf = (body: string): string[] =>
  [...body.matchAll(/<section[^>]*class="caution warning".*?<\/section>/gs)].flatMap(([block]) => paragraphsOf(block))

const paragraphsOf = (html: string): string[] =>
  [...html.matchAll(/<p\b[^>]*>(.*?)<\/p>/gs)].map(([, inner]) => plain(inner!)).filter((text) => text !== '')

const plain = (html: string): string =>
  html
    .replace(/<\/?(b|strong|em|i|a|span|code|time|sub|sup|wbr)\b[^>]*>/g, '')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&nbsp;', ' ')
    .replaceAll('&amp;', '&')
    .replaceAll('\u00ad', '')
    .replace(/\s+/g, ' ')
    .trim()
