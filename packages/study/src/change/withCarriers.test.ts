import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { withCarriers } from './withCarriers.ts'

const spec = stationLoop()

test('changes the number of carriers and nothing else', () => {
  expect(withCarriers(spec, 5)).toEqual({ ...spec, carriers: { ...spec.carriers, count: 5 } })
  expect(spec.carriers.count).toBe(3)
})

test('refuses a loop with a carrier in every zone, none, or a part of one', () => {
  for (const count of [8, 0, 2.5]) expect(() => withCarriers(spec, count)).toThrow(`takes 1 to 7 carriers, not ${count}`)
})

test('refuses a start that names the zones of another number of carriers', () => {
  const named = stationLoop({ carriers: { ...spec.carriers, start: [0, 3, 5] } })
  expect(withCarriers(named, 3).carriers.count).toBe(3)
  expect(() => withCarriers(named, 4)).toThrow(/let the start be a rule/)
})
