import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(loop: string) {
  const { scenario, problems } = readScenario(scenarioText(['10 zones of 1 m', loop]))
  return scenario?.line.zones.map((zone) => [zone.name, zone.lengthMetres]) ?? problems.map((problem) => problem.code)
}

test('one phrase', () => {
  expect(read('12 zones of 1.5 m')).toHaveLength(12)
  expect(read('12 zones of 1.5 m')[11]).toEqual(['Z12', 1.5])
  expect(read('12 × 1500 mm')[11]).toEqual(['Z12', 1.5])
  expect(read('12 x 4 ft')[0]).toEqual(['Z01', 1.2192])
})

test('groups and zones in travel order; names count through', () => {
  const zones = read('[6 × 1.5 m, { name: lift, length: 2 m }, 3 * 1.2 m]')
  expect(zones.slice(5, 8)).toEqual([
    ['Z06', 1.5],
    ['lift', 2],
    ['Z08', 1.2],
  ])
})

test('names have as many digits as the last one needs, at least two', () => {
  expect(read('9 zones of 1 m')[0]).toEqual(['Z01', 1])
  expect(
    readScenario(scenarioText(['10 zones of 1 m', '120 zones of 1 m'], ['Z01', 'Z001'], ['Z04', 'Z004'], ['Z08', 'Z120'])).scenario?.line
      .zones[7]?.name,
  ).toBe('Z008')
})

test.each([
  ['ten zones of 1 m', 'E_LOOP'],
  ['10 zones', 'E_LOOP'],
  ['10 zones of 1', 'E_UNIT_MISSING'],
  ['10 zones of 0 m', 'E_ZERO'],
  ['10 zones of 1 s', 'E_UNIT_OTHER'],
  ['0 zones of 1 m', 'E_NO_ZONES'],
  ['6000 zones of 1 m', 'E_TOO_MANY_ZONES'],
  [`[${'5000 × 1 m, '.repeat(50)}]`, 'E_TOO_MANY_ZONES'],
  ['[]', 'E_NO_ZONES'],
  ['12', 'E_TYPE'],
])('%s is refused', (loop, code) => {
  expect(read(loop)).toContain(code)
})

test('a fault in the length points at its column', () => {
  const { problems } = readScenario(scenarioText(['10 zones of 1 m', '10 zones of 1,5 m']))
  expect(problems[0]).toMatchObject({ code: 'E_DECIMAL_COMMA', line: 8, column: 19, length: 3 })
})
