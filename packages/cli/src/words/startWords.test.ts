import { expect, test } from 'vitest'
import { lengthWarning, startSentence } from './startWords.ts'

const scenario = (warmupSeconds: number, endSeconds: number, calendar = false) =>
  ({ line: { window: { warmupSeconds, endSeconds } }, calendar: calendar ? {} : null }) as never

test('each of the three questions is named', () => {
  expect(startSentence(scenario(0, 3600, true))).toContain('a shift that starts with an empty line')
  expect(startSentence(scenario(30000, 60000, true))).toContain('the 8.3 h before it are simulated and not counted')
  expect(startSentence(scenario(600, 60000))).toContain('production that goes on and on')
})

test('a stretch short beside its warm-up is told with the length that would do; a shift is not', () => {
  expect(lengthWarning(scenario(600, 4200))).toContain('100 min would do')
  expect(lengthWarning(scenario(600, 6600))).toBeNull()
  expect(lengthWarning(scenario(30000, 60000, true))).toBeNull()
})
