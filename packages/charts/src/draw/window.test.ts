import { expect, test } from 'vitest'
import { carriersText, niceStep, windowOf } from './window.ts'

test('defaults of a window, and windows that are none', () => {
  expect(windowOf({ windowSeconds: 10 })).toEqual({ per: 'window', windowSeconds: 10, netSeconds: 10, plan: null })
  expect(() => windowOf({ windowSeconds: 0 })).toThrow('is not a window')
  expect(() => windowOf({ windowSeconds: 10, netSeconds: 0 })).toThrow(RangeError)
})

test('steps are 1, 2 or 5 times a power of ten, and not too many', () => {
  expect([1, 7, 23, 99, 100, 0.3].map((span) => niceStep(span, 5))).toEqual([0.2, 2, 5, 20, 20, 0.1])
  for (const span of [0.07, 3, 46, 1234]) expect(span / niceStep(span, 6)).toBeLessThanOrEqual(6 + 1e-9)
})

test('one carrier, two carriers', () => expect([1, 2].map(carriersText)).toEqual(['1 carrier', '2 carriers']))
