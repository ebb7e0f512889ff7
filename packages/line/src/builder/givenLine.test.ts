import { expect, test } from 'vitest'
import { completeLine } from './givenLine.ts'
import { loopLine } from './sketchedLine.ts'

test('a line from code, or its complete form: the same', () => {
  const line = loopLine({ zones: 4, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 2, length: 1.2 }, end: 60 })
  expect(completeLine(line)).toBe(line.spec)
  expect(completeLine(line.spec)).toBe(line.spec)
})
