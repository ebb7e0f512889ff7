import { expect, test } from 'vitest'
import { simulatedWords } from './simulatedWords.ts'

const words = (result: object): string => simulatedWords(result as never, { many: 'shifts' })

test('what ran, one telling for command and notebook', () => {
  expect(words({ kind: 'comparison', lines: [0, 0] })).toBe('2 lines in the same simulated shifts')
  expect(words({ kind: 'station order', candidates: [0, 0, 0] })).toBe(
    '3 station orders in the same simulated shifts; today’s and the one chosen again in others',
  )
  expect(words({ kind: 'drivers', drivers: [0] })).toBe(
    'The line as it stands and 1 driver, each up and down, in the same simulated shifts',
  )
  expect(words({ kind: 'losses', causes: [0, 0] })).toBe('The line as it stands and without each of 2 causes, in the same simulated shifts')
})
