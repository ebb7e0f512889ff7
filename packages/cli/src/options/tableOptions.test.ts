import { expect, test } from 'vitest'
import { columnNames, sharePercent, shortestTimes } from './tableOptions.ts'

test('columns by what they are for', () => {
  expect(columnNames('time=Net time; Task=Step')).toEqual({ time: 'Net time', task: 'Step' })
  expect(() => columnNames('Net time')).toThrow('Write what a column is for')
})

test('shares and times', () => {
  expect(sharePercent(0, 60)('12,5 %')).toBe(0.125)
  expect(() => sharePercent(0, 60)('70')).toThrow('from 0 to 60')
  expect(() => sharePercent(0, 60)('')).toThrow()
  expect(shortestTimes('wire=30, fit lid = 12.5 s')).toEqual({ wire: 30, 'fit lid': 12.5 })
  expect(() => shortestTimes('wire')).toThrow('Write tasks with seconds')
})
