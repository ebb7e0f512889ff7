import { expect, test } from 'vitest'
import { filesUnder } from '../../../../tests/tidy/sources.ts'
import { checkDigest, type Functions, INEXACT } from './checkRuns.ts'

test('the same machine says the same', () => {
  expect(checkDigest()).toMatch(/^[0-9a-f]{8}$/)
  expect(checkDigest()).toBe(checkDigest())
})

test.each([...INEXACT, 'pow'] as const)('a %s that is one bit off at one of a hundred values is noticed', (name) => {
  const own: Functions[typeof name] = Math[name]
  let calls = 0
  const off = (x: number, y: number): number => {
    calls += 1
    const value = own(x, y)
    return calls % 100 === 0 ? value + value * Number.EPSILON : value
  }
  const functions = { ...Object.fromEntries(INEXACT.map((each) => [each, Math[each]])), pow: Math.pow, [name]: off } as Functions
  expect(checkDigest(functions)).not.toBe(checkDigest())
})

test('no function of the engine is forgotten', () => {
  // exact by ECMA-262: signs, whole numbers, the least and the greatest
  const known = new Set<string>([...INEXACT, 'pow', 'abs', 'ceil', 'floor', 'imul', 'max', 'min', 'round', 'sign', 'trunc'])
  const asked = new Set<string>()
  for (const name of ['kernel', 'stats', 'line', 'study'])
    for (const { text } of filesUnder(`packages/${name}/src`, /(?<!\.test)\.ts$/))
      for (const [, of] of text.matchAll(/\bMath\.([a-z]\w+)/g)) asked.add(of!)
  expect([...asked].filter((of) => !known.has(of))).toEqual([])
  expect(asked.has('log')).toBe(true)
})
