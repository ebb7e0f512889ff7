import { expect, test } from 'vitest'
import { replayHtml, SPEEDS } from './replayHtml.ts'

test('says what it is no proof of, and every control has its name', () => {
  const html = replayHtml()
  expect(html).toContain('a check of the model, not its proof')
  for (const speed of SPEEDS) expect(html).toContain(`<option value="${speed}"`)
  for (const [control] of html.matchAll(/<(?:input|select)[^>]*>/g)) {
    const named = /aria-label=/.test(control) || new RegExp(`<label>[^<]*${control.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`).test(html)
    expect(named, control).toBe(true)
  }
})
