import { expect, test } from 'vitest'
import { CHANGE_AT, Level } from './level.ts'

test('the mean weighs each count by its time, and a restart forgets', () => {
  const level = new Level()
  level.restart(0)
  level.sums[CHANGE_AT] = 2
  level.change(3)
  level.sums[CHANGE_AT] = 6
  level.change(-1)
  // 0 for 2 s, 3 for 4 s, 2 for 4 s
  expect(level.mean(10, 10)).toBe((3 * 4 + 2 * 4) / 10)
  level.restart(10)
  expect([level.count, level.mean(15, 5)]).toEqual([2, 2])
})
