import { expect, test } from 'vitest'
import { runClockText, traceLine } from './eventWords.ts'

test('time to the millisecond', () => {
  expect([0, 59.9996, 3661.25, 36_000].map(runClockText)).toEqual(['0:00:00.000', '0:01:00.000', '1:01:01.250', '10:00:00.000'])
})

test('events in words', () => {
  const plain = { seconds: 61.5, carrier: 3, place: 'Z04', to: null, detail: null }
  expect(traceLine({ ...plain, event: 'move start', to: 'Z05', detail: 'at speed' })).toBe(
    ' 0:01:01.500        3  leaves Z04 for Z05, at speed',
  )
  expect(traceLine({ ...plain, event: 'load', detail: 17 })).toBe(' 0:01:01.500        3  takes product 17 in Z04')
  expect(traceLine({ ...plain, event: 'stop begin', place: 'jam', carrier: null })).toBe(' 0:01:01.500           jam: stopped')
})
