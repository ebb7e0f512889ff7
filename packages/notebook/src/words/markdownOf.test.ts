import { expect, test } from 'vitest'
import { markdownWriter } from '../page/markdown.ts'
import { plainText } from '../terminal/plainText.ts'
import { markdownOf } from './markdownOf.ts'

const NAMES = ['S_1_', '*all*', '[Ann](http://a.example)', '<b>x</b>', 'a\\b', '~~old~~', 'A|B', '# first', '- 5 s']

test.each(NAMES)('a name is told as it is, on the page and in the terminal: %s', (name) => {
  expect(plainText(markdownOf(name), 80)).toBe(name)
  const html = markdownWriter().write(markdownOf(name))
  const told = html
    .replace(/<\/?p>|\n/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('\u00a0', ' ')
  expect(told).toBe(name)
})

test('what is to be typed stays a code', () => {
  expect(markdownWriter().write(markdownOf('Try `a_b --c`.'))).toContain('<code>a_b --c</code>')
})
