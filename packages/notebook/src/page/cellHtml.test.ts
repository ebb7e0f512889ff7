import { expect, test } from 'vitest'
import { cellHtml } from './cellHtml.ts'
import { NASTY } from '../../../../tests/helpers/pageCells.ts'
import { markdownWriter } from './markdown.ts'

test('large figures stand before the sentences, each with what it is and how sure it is', () => {
  const figures = [
    { label: 'Carriers', value: '11', sure: `${NASTY}` },
    { label: 'Plan of 320 met', value: 'about', sure: '' },
  ]
  const html = cellHtml({ kind: 'answer', id: 'a', sentences: ['First.', 'Second.', 'Third.'], figures }, markdownWriter(), new Map())
  expect(html.indexOf('class="figures"')).toBeLessThan(html.indexOf('class="first"'))
  expect(html).toContain('<dt>Carriers</dt><dd><span class="value">11</span>')
  expect(html).toContain('<dt>Plan of 320 met</dt><dd><span class="value">about</span></dd>')
  expect(html).toContain('<div class="more"><p>Second.</p>\n<p>Third.</p></div>')
  expect(html).not.toContain(NASTY)
})

test('the button of the answer is marked, in words too', () => {
  const options = ['5', '6'].map((key) => ({ key, label: key }))
  const html = cellHtml({ kind: 'choice', id: 'carriers', legend: 'Carriers', options, shown: '6' }, markdownWriter(), new Map())
  expect(html.match(/class="answered"/g)).toHaveLength(1)
  expect(html).toContain('value="6" checked><span>6<span class="hidden">, the answer</span></span>')
})
