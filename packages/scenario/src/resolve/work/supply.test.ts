import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const supply = (text: string) => readScenario(scenarioText(['', `supply: ${text}`])).scenario?.line.supply

test('always there, every so long, or at given times', () => {
  expect(supply('always')).toEqual({ name: 'supply', arrivals: { kind: 'always' }, queueLimit: null })
  expect(supply('{ every: exponential 60 s, queue: 3 }')).toEqual({
    name: 'supply',
    arrivals: { kind: 'every', seconds: { kind: 'exponential', mean: 60 } },
    queueLimit: 3,
  })
  expect(supply('{ name: dock, times: [10 s, 1 min], queue: unlimited }')).toEqual({
    name: 'dock',
    arrivals: { kind: 'list', instants: [10, 60] },
    queueLimit: null,
  })
})

test('a station of its own supply, its stream named by the station', () => {
  const { line } = readScenario(scenarioText(['Z01,', 'Z01, supply: { every: 30 s },'])).scenario!
  expect(line.stations[0]!.supply?.name).toBe('supply/Load')
  expect(line.supply.arrivals.kind).toBe('always')
})

test('both or neither is an error', () => {
  const codes = (text: string) => readScenario(scenarioText(['', `supply: ${text}`])).problems.map(({ code }) => code)
  expect(codes('{ every: 3 s, times: [3 s] }')).toEqual(['E_ONLY_ONE_OF'])
  expect(codes('{ queue: 3 }')).toEqual(['E_SUPPLY'])
  expect(codes('{ times: [3 s, 2 s] }')).toEqual(['E_TIMES_ORDER'])
})
