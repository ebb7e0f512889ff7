import { expect, test } from 'vitest'
import { NASTY, zones } from '../../../../tests/helpers/pageCells.ts'
import { planHtml } from './planHtml.ts'

test('a plan is drawn for wide screens, narrow ones and paper, each with ids of its own', () => {
  const html = planHtml({ zones, paths: null, valueMeaning: 'share, %' }, 'plan')
  expect([...html.matchAll(/<div class="(\w+)"><svg/g)].map((found) => found[1])).toEqual(['wide', 'narrow', 'paper'])
  const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((found) => found[1])
  expect(new Set(ids).size).toBe(ids.length)
  expect(html).not.toContain(NASTY)
  expect(html).not.toContain('style=')
})

test('a line that is no single loop is drawn as a map', () => {
  const html = planHtml({ zones, paths: [{ from: -1, to: 0 }], valueMeaning: null }, 'plan')
  expect(html).toContain('Map of the line')
  expect(planHtml({ zones, paths: null, valueMeaning: null }, 'plan')).toContain('Plan of the loop')
})
