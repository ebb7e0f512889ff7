import { expect, test } from 'vitest'
import { markdownWriter } from './markdown.ts'

test('headings start at level 2 and skip none, over all parts of a page', () => {
  const writer = markdownWriter()
  expect(writer.write('# Top')).toBe('<h2>Top</h2>\n')
  expect(writer.write('#### Deep')).toBe('<h3>Deep</h3>\n')
  expect(writer.level()).toBe(3)
  expect(writer.write('## Back')).toBe('<h2>Back</h2>\n')
})

test('HTML is shown, not obeyed', () => {
  expect(markdownWriter().write('<script>a()</script>')).toBe('<p>&lt;script&gt;a()&lt;/script&gt;</p>\n')
})

test('a wide table scrolls in a place of its own', () => {
  const html = markdownWriter().write('| a | b |\n| --- | ---: |\n| 1 | 2 |')
  expect(html).toMatch(/^<div class="scroll"><table>/)
  expect(html.trimEnd().endsWith('</table></div>')).toBe(true)
})
