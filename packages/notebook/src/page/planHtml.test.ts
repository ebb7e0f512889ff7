import { expect, test } from 'vitest'
import { NASTY, zones } from './fixtures.test.ts'
import { planHtml } from './planHtml.ts'

test('a plan is drawn for wide screens, narrow ones and paper, each with ids of its own', () => {
  const html = planHtml({ zones, valueMeaning: 'share, %' }, 'plan')
  expect([...html.matchAll(/<div class="(\w+)"><svg/g)].map((found) => found[1])).toEqual(['wide', 'narrow', 'paper'])
  const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((found) => found[1])
  expect(new Set(ids).size).toBe(ids.length)
  expect(html).not.toContain(NASTY)
  expect(html).not.toContain('style=')
})
