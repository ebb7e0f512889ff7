import { loopLine } from '@loopwright/line'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { storageZones, withCarriers } from './withCarriers.ts'

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

test('refuses more carriers than there are zones to start in', () => {
  const { spec: line } = loopLine({
    zones: 6,
    zoneLength: 1.5,
    drive: { speed: 0.3 },
    own: {
      Z02: { transfer: { lift: 1, lower: 1, enterOnlyIfExitClear: true } },
      Z05: { transfer: { lift: 1, lower: 1, enterOnlyIfExitClear: true } },
    },
    carriers: { count: 3, length: 1.2, width: 1.2 },
    end: 60,
  })
  expect(storageZones(line)).toBe(4)
  expect(withCarriers(line, 4).carriers.count).toBe(4)
  expect(() => withCarriers(line, 5)).toThrow('a loop of 6 zones takes 1 to 4 carriers, not 5')
})
