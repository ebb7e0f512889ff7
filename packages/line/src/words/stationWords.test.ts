import { expect, test } from 'vitest'
import { stationWords } from './stationWords.ts'

test('name and title, or the one that both are', () => {
  expect(stationWords({ name: 'S6', title: 'Test' })).toBe('S6 Test')
  expect(stationWords({ name: 'load', title: 'load' })).toBe('load')
})
