import { expect, test } from 'vitest'
import { secondsWords, timesName } from './timesWords.ts'

test('names and seconds', () => {
  expect(timesName({ task: 'wire', variant: null })).toBe('wire')
  expect([45.26, 145.26].map(secondsWords)).toEqual(['45.3', '145'])
})
