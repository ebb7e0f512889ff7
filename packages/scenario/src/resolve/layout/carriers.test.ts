import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(carriers: string, ...changes: [string, string][]) {
  const { scenario, problems } = readScenario(scenarioText(['{ count: 4, length: 0.8 m, width: 0.8 m }', carriers], ...changes))
  return scenario?.line.carriers ?? problems.map((problem) => problem.code)
}

test('the start is kept as a rule, or as zones', () => {
  expect(read('{ count: 4, length: 0.8 m }')).toEqual({ count: 4, lengthMetres: 0.8, widthMetres: null, start: 'spread' })
  expect(read('{ count: 4, length: 0.8 m, start: packed }')).toMatchObject({ start: 'packed' })
  expect(read('{ count: 2, length: 0.8 m, start: [Z09, Z02] }')).toMatchObject({ start: [8, 1] })
})

test.each([
  ['{ count: 3, length: 0.8 m, start: [Z09, Z02] }', 'E_START_COUNT'],
  ['{ count: 2, length: 0.8 m, start: [Z09, Z09] }', 'E_START_TWICE'],
  ['{ count: 2, length: 0.8 m, start: [Z09, Z19] }', 'E_UNKNOWN_ZONE'],
  ['{ count: 2, length: 0.8 m, start: scattered }', 'E_CHOICE'],
  ['{ count: 10, length: 0.8 m }', 'E_CARRIERS_FILL'],
  ['{ count: 1e999, length: 0.8 m }', 'E_NOT_FINITE'],
  ['{ count: 2, length: 1.1 m }', 'E_CARRIER_LONG'],
  ['{ count: 2 }', 'E_CARRIER_SIZE'],
  ['4', 'E_TYPE'],
])('%s is refused', (carriers, code) => {
  expect(read(carriers)).toContain(code)
})
