import { expect, test } from 'vitest'
import { hatchingDefs, hatchings } from './hatching.ts'
import { PRINT } from './palette.ts'

test('every hatching that print refers to is there, and no two look alike', () => {
  const patterns = [...hatchingDefs().matchAll(/<pattern id="([^"]+)"[^>]*>(.*?)<\/pattern>/g)]
  expect(patterns.map((found) => `url(#${found[1]})`)).toEqual(PRINT.states)
  expect(new Set(patterns.map((found) => found[2])).size).toBe(10)
})

test('the page holds them without showing or reading them', () => {
  expect(hatchings()).toMatch(/^<svg width="0" height="0"[^>]*aria-hidden="true"/)
})
