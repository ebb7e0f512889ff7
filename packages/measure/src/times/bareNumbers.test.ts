import { expect, test } from 'vitest'
import { textCell } from '../table/rawTable.ts'
import { secondsOf } from './bareNumbers.ts'

// readTimes.test.ts tries what is guessed of whole columns
test('seconds where no unit stands, and nothing of what is no time', () => {
  const style = { numbers: 'point', unit: null, clock: 'm:ss' } as const
  expect(secondsOf(textCell('45'), style)).toBe(45)
  expect(secondsOf(textCell('45'), { ...style, unit: 'min' })).toBe(2700)
  expect(secondsOf(textCell('soon'), style)).toBeNull()
})
