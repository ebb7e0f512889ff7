import { expect, test } from 'vitest'
import { lengthWarning, startSentence } from './startWords.ts'

const scenario = (warmupSeconds: number, endSeconds: number, calendar = false) =>
  ({ line: { window: { warmupSeconds, endSeconds } }, calendar: calendar ? { shifts: 1 } : null }) as never

test('each of the three questions is named', () => {
  expect(startSentence(scenario(0, 3600, true))).toBe('Each shift starts with an empty line: filling it is part of the answer.')
  expect(startSentence(scenario(0, 3600))).toContain('Each window of 60 min starts with an empty line')
  expect(startSentence(scenario(30000, 60000, true))).toContain('the 8 h 20 min before it are simulated and not counted')
  expect(startSentence(scenario(600, 60000))).toContain('production that goes on and on')
})

test('a stretch short beside its warm-up is told with the length that is enough; a shift is not', () => {
  const [warning, ...more] = lengthWarning(scenario(600, 4200))
  expect(more).toEqual([])
  expect(warning!.tone).toBe('warning')
  expect(warning!.markdown).toContain('60 min is short beside a warm-up of 10 min')
  expect(warning!.markdown).toContain('100 min is enough')
  expect(lengthWarning(scenario(600, 6600))).toEqual([])
  expect(lengthWarning(scenario(30000, 60000, true))).toEqual([])
  expect(lengthWarning(scenario(600, 4200), true)).toEqual([])
})
