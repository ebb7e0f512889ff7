import { expect, test } from 'vitest'
import { faultLine, refusal, TableError } from './tableError.ts'

test('every fault is a line, with place and remedy where there are any', () => {
  const faults = [
    { file: 'a.csv', place: '', what: 'it is empty', fix: '' },
    { file: 'a.csv', place: 'line 2', what: 'no time', fix: 'write one' },
  ]
  expect(new TableError(faults).message).toBe('"a.csv": it is empty\n"a.csv", line 2: no time; write one')
  expect(faultLine(refusal('b', 'line 1', 'x', 'y').faults[0]!)).toBe('"b", line 1: x; y')
})
