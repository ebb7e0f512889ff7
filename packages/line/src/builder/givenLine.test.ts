import { expect, test } from 'vitest'
import { completeLine } from './givenLine.ts'
import { LineError } from './report.ts'
import { loopLine } from './sketchedLine.ts'
import type { LineSpec } from '../spec.ts'

test('a line from code, or its complete form: the same', () => {
  const line = loopLine({ zones: 4, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 2, length: 1.2 }, end: 60 })
  expect(completeLine(line)).toBe(line.spec)
  expect(completeLine(line.spec)).toBe(line.spec)
})

test('what is no line is told as such, a sketch too', () => {
  const sketch = { zones: 4, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 2, length: 1.2 }, end: 60 }
  const told = (given: unknown) => () => completeLine(given as LineSpec)
  expect(told(sketch)).toThrow('line: found a set of keys; write a line: what loopLine, straightLine or graphLine makes')
  expect(told({ zones: [], window: 60 })).toThrow(LineError)
  expect(told(undefined)).toThrow('line: found nothing')
  expect(told('ring.yaml')).toThrow('line: found the text "ring.yaml"')
})
