import { expect, test } from 'vitest'
import { escapeHtml } from './html.ts'

test('no text of a user becomes a tag or leaves an attribute', () => {
  expect(escapeHtml('<img src=x onerror="a">&')).toBe('&lt;img src=x onerror=&quot;a&quot;&gt;&amp;')
})
