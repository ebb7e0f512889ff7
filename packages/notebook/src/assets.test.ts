import { createHash } from 'node:crypto'
import { inflateRawSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { pageAssets } from './assets.ts'

test('the script is whole, cannot end its element, and is known by its hash', async () => {
  const { script, scriptHash, style, styleHash } = await pageAssets(false)
  const hash = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`
  expect(script.length).toBeGreaterThan(20_000)
  expect(script).not.toMatch(/<\/script|<!--/i)
  expect(scriptHash).toBe(hash(script))
  expect(styleHash).toBe(hash(style))
})

test('only a page with charts of one’s own carries what draws them', async () => {
  const [plain, own] = [await pageAssets(false), await pageAssets(true)]
  expect(own.script.length).toBeGreaterThan(5 * plain.script.length)
  expect(own.script).toContain('vega')
  expect(plain.script).not.toContain('vega-lite')
})

test('what is packed can be unpacked, and has no sign that means something in HTML', async () => {
  const { pack } = await pageAssets(false)
  const text = JSON.stringify({ text: '</script>é\u202f'.repeat(100) })
  expect(pack(text)).toMatch(/^[\w+/=]+$/)
  expect(pack(text).length).toBeLessThan(text.length / 5)
  expect(inflateRawSync(Buffer.from(pack(text), 'base64')).toString()).toBe(text)
})
