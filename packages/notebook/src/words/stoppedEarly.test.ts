import { expect, test } from 'vitest'
import { stoppedEarly } from './stoppedEarly.ts'

test('said of a study that was stopped, and of no other', () => {
  expect(stoppedEarly('drivers', { partial: false, replications: 30 }, 30, { many: 'shifts' })).toEqual([])
  const [told] = stoppedEarly('drivers', { partial: true, replications: 30 }, 12, { many: 'shifts' })
  expect(told).toMatchObject({ id: 'warning-drivers-partial', tone: 'warning', title: 'Stopped early' })
  expect(told!.markdown).toBe('12 of 30 shifts are simulated. The intervals are wider than asked for.')
})
