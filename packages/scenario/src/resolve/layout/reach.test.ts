import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'
import { productZones } from '@loopwright/line/check'

const read = (...changes: [string, string][]) => readScenario(scenarioText(...changes))
const codes = (...changes: [string, string][]): string[] => read(...changes).problems.map(({ code, path }) => `${code} ${path}`)

describe('products are where the way leads from load to unload', () => {
  test('on a loop: from the load station to the unload station, both included', () => {
    expect([...productZones(read().scenario!.line)]).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
  })
  test('a station that unloads and loads passes products on; one that takes rejected ones off does too', () => {
    const both = read(['unload: { take: 20 s ± 10 % }', 'unload: { take: 20 s }, load: { put: 20 s }'])
    expect(productZones(both.scenario!.line).size).toBe(10)
    const rejected = read(['unload: { take: 20 s ± 10 % }', 'accepts: rejected, unload: { take: 20 s }'])
    expect(productZones(rejected.scenario!.line).size).toBe(10)
    const inspected = read(['', 'inspections: { fit: 2 % }'])
    expect(productZones(inspected.scenario!.line).size).toBe(10)
  })
})

test('a station against the flow is told, and only that', () => {
  expect(codes()).toEqual([])
  expect(codes(['zone: Z04', 'zone: Z09'])).toEqual(['W_STATION_UNREACHED stations.Fit.zone'])
  expect(codes(['zone: Z08', 'zone: Z02'])).toEqual(['W_STATION_UNREACHED stations.Fit.zone'])
  expect(codes(['zone: Z08', 'zone: Z10'])).toEqual([])
})

describe('a spur of exit-clear transfers', () => {
  const spur = (exitClear: boolean, back: string): [string, string][] => [
    ['', `zones: { T: { length: 1 m, transfer: { lift: 1 s, lower: 1 s, enterOnlyIfExitClear: ${exitClear} } } }`],
    ['', `paths: [{ from: Z05, to: T, takes: { load: empty } }, { from: T, to: ${back} }]`],
  ]
  test('that leads back to its own zone is never entered', () => {
    expect(codes(...spur(true, 'Z05'))).toEqual(['W_SPUR_CLOSED paths[0]'])
    expect(codes(...spur(true, 'Z06'))).toEqual([])
    expect(codes(...spur(false, 'Z05'))).toEqual([])
  })
})
