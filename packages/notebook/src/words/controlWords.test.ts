import { outputInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { controlSentence, toldCount } from './controlWords.ts'

const units = Array.from({ length: 100 }, (_, k) => 320 + (k % 21))
const mean = outputInterval(units)
const controlled = {
  n: 100,
  mean: 331,
  level: 0.95,
  halfWidth: 0.9,
  low: 330.1,
  high: 331.9,
  controls: ['stops', 'work'],
  batches: 50,
  worth: 437.9,
}
const count = { units, mean, controlled }

test('the mean without luck takes the place of the plain one, unless the reader wants it plain', () => {
  expect(toldCount(count).mean).toMatchObject({ mean: 331, low: 330.1, high: 331.9, halfWidth: 0.9, n: 100, sd: mean.sd })
  expect(toldCount(count, true)).toEqual({ units, mean, controlled: null })
  expect(toldCount({ ...count, controlled: null })).toEqual({ ...count, controlled: null })
})

test('it is told as what it is, no better than it is', () => {
  expect(controlSentence(toldCount(count), { many: 'shifts' })).toBe(
    ' The luck of these shifts with stops and times of work is taken out of it, which makes them as good as 430 plain shifts, whose mean is 330 ± 1.',
  )
  expect(
    controlSentence(
      { ...count, controlled: { ...controlled, controls: ['stops of stations', 'stops on the way'], worth: null } },
      { many: 'shifts' },
    ),
  ).toBe(
    ' The luck of these shifts with stops is taken out of it, and nothing else is left to chance; plain shifts have a mean of 330 ± 1.',
  )
  expect(controlSentence(toldCount(count, true), { many: 'shifts' })).toBe('')
})
