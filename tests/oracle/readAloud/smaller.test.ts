import { expect, test } from 'vitest'
import { lineFrom } from './randomLine.ts'
import { readAloud } from './readAloud.ts'
import { smallest } from './smaller.ts'

test('a planted fault is cut free from all that has no part in it', () => {
  // The "fault": a line that has a breakdown of the whole line, and a break that begins in the window.
  const showsFault = (spec: ReturnType<typeof lineFrom>): boolean =>
    spec.breakdowns.some((source) => source.part.kind === 'section') && readAloud(spec, 'planted', 0).result.breaks.count > 0
  const seed = Array.from({ length: 100 }, (_, index) => index).find((index) => showsFault(lineFrom(index)))!
  const least = smallest(lineFrom(seed), showsFault)
  expect(showsFault(least)).toBe(true)
  expect(least.zones).toHaveLength(3)
  expect(least.carriers.count).toBe(1)
  expect(least.stations).toEqual([])
  expect(least.breakdowns).toHaveLength(1)
  expect(least.breaks).toHaveLength(1)
})

test('a line on which the look throws does not count as showing the fault', () => {
  const spec = lineFrom(0)
  expect(
    smallest(spec, () => {
      throw new Error('no look at it')
    }),
  ).toBe(spec)
})
