import { outputInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { intervalCaution } from './intervalWords.ts'

test('few replications and a skewed shape are said, a good interval is not talked about', () => {
  expect(intervalCaution(outputInterval([1, 2, 3]))).toContain('With 3 the interval is rough')
  expect(intervalCaution(outputInterval([...Array.from({ length: 19 }, () => 100), 10]))).toContain('rare long stops')
  expect(intervalCaution(outputInterval(Array.from({ length: 40 }, (_, index) => 100 + (index % 7))))).toBe('')
})
