import { expect, test } from 'vitest'
import { dedent, plainText } from './plainText.ts'

test('headings, emphasis, code and links lose their marks', () => {
  expect(plainText('## Result\nWith **10** carriers, see [the page](out/x.html) and `--json`.', 80)).toBe(
    'Result\n\nWith 10 carriers, see the page and --json.',
  )
})

test('lines of a paragraph are joined and wrapped, lists stay lists', () => {
  expect(plainText('one\ntwo three\n\n- first item here\n- second', 11)).toBe('one two\nthree\n\n- first\n  item here\n- second')
})

test('a product of numbers is no emphasis', () => {
  expect(plainText('2 * 3 * 4', 80)).toBe('2 * 3 * 4')
})

test('text indented like the code around it moves to the left', () => {
  expect(dedent('\n    ## A\n      b\n\n    c\n  ')).toBe('## A\n  b\n\nc')
  expect(dedent('a\n      b\n\n      c')).toBe('a\nb\n\nc')
})
