import { meanInterval, outputInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { intervalCaution, intervalsCaution } from './intervalWords.ts'

test('few replications and a skewed shape are said, a good interval is not talked about', () => {
  expect(intervalCaution(outputInterval([9, 10, 11]))).toContain('With 3 the interval is rough, and what is rare may not be among them')
  // t(0.975; 2) = 4.303 (table of Student's t): 100 ± 4.303·100/√3, as far as 348
  expect(intervalCaution(outputInterval([0, 100, 200]))).toBe(
    ' With 3 the interval is more than half as large as the number itself, which says next to nothing: simulate more, 30 are usual.',
  )
  expect(intervalCaution(outputInterval([...Array.from({ length: 19 }, () => 100), 10]))).toContain('rare long stops')
  expect(intervalCaution(outputInterval(Array.from({ length: 40 }, (_, index) => 100 + (index % 7))))).toBe('')
})

test('of several numbers: few replications are said once, and that one says next to nothing', () => {
  const [narrow, wide] = [meanInterval([99, 100, 101]), meanInterval([0, 100, 200])]
  expect(intervalsCaution(3, [narrow, narrow], 'shifts')).toBe(
    ' With as few as 3 shifts the intervals are rough, and what is rare may not be among them: 30 are usual.',
  )
  expect(intervalsCaution(3, [narrow, wide], 'shifts')).toBe(
    ' With as few as 3 shifts an interval that is more than half as large as its number says next to nothing: simulate more, 30 are usual.',
  )
  expect(intervalsCaution(10, [wide], 'shifts')).toBe('')
})
