import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { lineMark } from './lineMark.ts'

test('the same line has the same mark, another one has another', () => {
  const line = smallLoop({ zones: 4 })
  expect(lineMark(line)).toMatch(/^[0-9a-f]{12}$/)
  expect(lineMark(structuredClone(line))).toBe(lineMark(line))
  expect(lineMark({ ...line, carriers: { ...line.carriers, count: 2 } })).not.toBe(lineMark(line))
})
