import { outputInterval, quantileEstimate, windowInterval } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { countWords } from './countWords.ts'

test('each number has one rounding, by its own interval', () => {
  const units = [320, 325, 330, 335, 340]
  const words = countWords({
    mean: outputInterval(units),
    p10: quantileEstimate(units, 0.1),
    p50: quantileEstimate(units, 0.5),
    singleShift: windowInterval(units),
  })
  expect(words).toEqual({
    mean: '330',
    halfWidth: '10',
    p10: '322',
    p50: '330',
    low: '306',
    high: '354',
  })
})

test('what is not known is a dash', () => {
  const words = countWords({ mean: null, p10: null, p50: null, singleShift: null })
  expect(words.mean).toBe('–')
  expect(words.halfWidth).toBe('–')
  expect(words.p10).toBeNull()
})

test('a shift makes no less than nothing', () => {
  expect(countWords({ mean: null, p10: null, p50: null, singleShift: { ...windowInterval([-3, 9]), low: -3, high: 9 } }).low).toBe('0')
})
