import { expect, test } from 'vitest'
import { escapeHtml, scriptJson } from './html.ts'

test('no text of a user becomes a tag or leaves an attribute', () => {
  expect(escapeHtml('<img src=x onerror="a">&')).toBe('&lt;img src=x onerror=&quot;a&quot;&gt;&amp;')
})

test('no data end the script they lie in, and they read back the same', () => {
  const data = { a: '</script><script>', b: '<!--', c: '\u2028' }
  const text = scriptJson(data)
  expect(text).not.toMatch(/[<\u2028]/)
  expect(JSON.parse(text)).toEqual(data)
})
