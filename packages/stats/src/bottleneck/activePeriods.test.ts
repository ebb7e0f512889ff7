import { expect, test } from 'vitest'
import { activePeriods } from './activePeriods.ts'

test('periods that reach out of the window count with their whole length, their shares within it', () => {
  const got = activePeriods({ A: [{ from: -100, to: 5 }], B: [{ from: 0, to: 10 }] }, 0, 10)
  expect(got.momentary.map((one) => [one.from, one.to, one.station])).toEqual([
    [0, 5, 'A'],
    [5, 10, 'B'],
  ])
  expect(got.shifting).toEqual({ A: 0.5, B: 0.5 })
  expect(got.sole).toEqual({ A: 0, B: 0.5 })
})

test('all wait, and two alike: the one listed first', () => {
  expect(activePeriods({ A: [] }, 0, 10)).toEqual({
    momentary: [{ from: 0, to: 10, station: null, period: null }],
    sole: { A: 0 },
    shifting: { A: 0 },
  })
  const same = [{ from: 2, to: 4 }]
  expect(activePeriods({ B: same, A: [...same] }, 2, 4).momentary).toHaveLength(1)
  expect(activePeriods({ B: same, A: [{ from: 2, to: 4 }] }, 2, 4).momentary[0]!.station).toBe('B')
})

test('refused', () => expect(() => activePeriods({}, 5, 5)).toThrow('has no length'))
