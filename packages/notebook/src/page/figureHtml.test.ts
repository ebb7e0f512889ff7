import { expect, test } from 'vitest'
import { figureHtml, leadFigureHtml, leadNumbersHtml } from './figureHtml.ts'
import { chartCell, ownCell, planCell } from '../../../../tests/helpers/pageCells.ts'

test('a figure is finding, picture with its text, how to read it, and the numbers behind a summary', () => {
  const html = figureHtml(chartCell, 3, null)
  const order = [
    '<h3 class="finding">Finding 6</h3>',
    'role="img" aria-label="Alternative 6"',
    '<p class="how">Read 6</p>',
    '<details><summary>',
    'Table 6',
  ]
  expect(order.map((part) => html.indexOf(part))).toEqual(order.map((part) => html.indexOf(part)).toSorted((a, b) => a - b))
  expect(order.every((part) => html.includes(part))).toBe(true)
})

test('a chart of ours stands in the page, for wide screens and for narrow ones, and needs no script', () => {
  const html = figureHtml(chartCell, 3, null)
  expect(html).toMatch(/<div class="picture" role="img" aria-label="Alternative 6"><div class="wide"><svg[^>]* width="720"/)
  expect(html).toMatch(/<div class="narrow"><svg[^>]* width="328"/)
  expect(html).not.toContain('<noscript>')
})

test('the numbers of the picture that stands beside the answer stand by themselves', () => {
  expect(leadFigureHtml(chartCell, null)).not.toContain('<details')
  expect(leadNumbersHtml(chartCell)).toMatch(/^<div id="stations-numbers" class="leadnumbers"><details>/)
})

test('of a chart of one’s own readers without scripts get a still picture, or at least its words', () => {
  expect(figureHtml(ownCell, 3, null)).toContain('<noscript><p>Alternative 3</p></noscript>')
  const still = `<svg xmlns="http://www.w3.org/2000/svg"><text fill="#fff">50 % "a" 'b' &amp; &lt;</text></svg>`
  const source = /src="([^"]*)"/.exec(figureHtml(ownCell, 3, still))![1]!
  expect(source.startsWith('data:image/svg+xml,')).toBe(true)
  expect(source).not.toMatch(/[<>#&]/)
  expect(decodeURIComponent(source.slice('data:image/svg+xml,'.length))).toBe(
    `<svg xmlns='http://www.w3.org/2000/svg'><text fill='#fff'>50 % 'a' &#39;b&#39; &amp; &lt;</text></svg>`,
  )
})

test('a plan needs no script', () => {
  expect(figureHtml(planCell, 3, null)).toMatch(/<div class="picture"><div class="wide"><svg/)
  expect(figureHtml(planCell, 3, null)).not.toContain('<noscript>')
})

test('findings are headings of level 2 or 3', () => {
  expect(figureHtml(chartCell, 2, null)).toContain('<h2 class="finding">')
  expect(figureHtml(chartCell, 5, null)).toContain('<h3 class="finding">')
})

test('a table that is part of the story stands open', () => {
  const { content } = chartCell.views.of[1]!
  const open = { ...chartCell, views: { ...chartCell.views, of: [{ key: '6', content: { ...content, tableOpen: true } }] } }
  expect(figureHtml(open, 3, null)).toContain('<details open>')
})
