import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { windowHtml } from './windowHtml.ts'

const hash = (text: string): string => createHash('sha256').update(text).digest('base64')

test('only its own script and style are allowed, and only its own server is asked', () => {
  const { html, policy } = windowHtml('<study>.ts', 'go()', hash)
  expect(html).toContain('<title>&lt;study&gt;.ts</title>')
  const [, style] = /<style>([\s\S]*)<\/style>/.exec(html)!
  for (const allowed of [
    `script-src 'sha256-${hash('go()')}'`,
    `style-src 'sha256-${hash(style!)}'`,
    "connect-src 'self'",
    "default-src 'none'",
  ])
    expect(policy).toContain(allowed)
  expect(html.match(/<script/g)).toHaveLength(1)
})
