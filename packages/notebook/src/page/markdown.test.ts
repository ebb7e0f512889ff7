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
