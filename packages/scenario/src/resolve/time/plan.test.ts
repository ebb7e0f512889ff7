import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const CALENDAR = 'calendar: { shift: { from: "06:00", to: "14:00" }, breaks: [{ after: 2 h, lasts: 30 min }], judge: shifts 2 to 3 }\n'

function read(plan: string, time = CALENDAR) {
  const { scenario, problems } = readScenario(scenarioText(['warmup: 1 h\nlength: 8 h\n', `plan: ${plan}\n${time}`]))
  return scenario?.plan ?? problems.map((problem) => problem.code)
}

test('what the window must make: per shift, per net hour (7.5 h each), per clock hour (8 h each)', () => {
  expect(read('320 per shift')).toEqual({ units: 320, per: 'shift', unitsPerWindow: 640 })
  expect(read('40 per net hour')).toEqual({ units: 40, per: 'net hour', unitsPerWindow: 600 })
  expect(read('40 units per clock hour')).toEqual({ units: 40, per: 'clock hour', unitsPerWindow: 640 })
})

test('without a calendar there are hours only', () => {
  const time = 'warmup: 1 h\nlength: 8 h\nbreaks: [{ after: 2 h, lasts: 30 min }]\n'
  expect(read('40 per net hour', time)).toMatchObject({ unitsPerWindow: 300 })
  expect(read('40 per clock hour', time)).toMatchObject({ unitsPerWindow: 320 })
  expect(read('320 per shift', time)).toEqual(['E_PLAN_SHIFT'])
})

test('in so many hours of the clock, breaks included, in proportion to the window', () => {
  expect(read('410 in 8 h')).toEqual({ units: 410, per: '8 h', unitsPerWindow: 820 })
  expect(read('100 units in 90 min', 'warmup: 1 h\nlength: 3 h\n')).toEqual({ units: 100, per: '90 min', unitsPerWindow: 200 })
})

test.each([
  ['5 in 0 h', 'E_ZERO'],
  ['5 in 8', 'E_PLAN'],
  ['320', 'E_TYPE'],
  ['320 a day', 'E_PLAN'],
  ['40/h', 'E_WHICH_HOUR'],
  ['40 per hour', 'E_WHICH_HOUR'],
  ['0 per shift', 'E_ZERO'],
  ['-5 per shift', 'E_NEGATIVE'],
  ['4,5 per shift', 'E_DECIMAL_COMMA'],
  ['many per shift', 'E_PLAN'],
  ['5 kg per shift', 'E_PLAN'],
  ['1e12 per shift', 'E_BEYOND_REACH'],
])('%s is refused', (plan, code) => {
  expect(read(plan)).toEqual([code])
})
