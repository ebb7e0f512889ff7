import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'

const found = (...changes: [string, string][]): string[] =>
  readScenario(scenarioText(...changes)).problems.map(({ code, path }) => `${code} ${path}`)

test.each([
  ['12 m/min', '121 m/min', 'drive.speed'],
  ['0.5 m/s²', '11 m/s²', 'drive.acceleration'],
  ['length: 0.8 m, width: 0.8 m', 'length: 0.8 m, width: 40 mm', 'carriers.width'],
  ['40 s ± 10 %', '40 s ± 101 %', 'stations.Fit.work.fit'],
  ['40 s ± 10 %', '4.1 h', 'stations.Fit.work.fit'],
  ['fit: 40 s ± 10 % }', 'fit: 40 s }, release: 31 min', 'stations.Fit.release'],
])('%s as %s is told', (from, to, path) => {
  expect(found([from, to])).toEqual([`W_UNUSUAL ${path}`])
})

test.each([
  ['12 m/min', '120 m/min'],
  ['40 s ± 10 %', '40 s ± 100 %'],
  ['40 s ± 10 %', 'exponential 40 s'],
  ['40 s ± 10 %', '0 s'],
])('%s as %s is not', (from, to) => {
  expect(found([from, to])).toEqual([])
})

test('zones of one length are one finding', () => {
  expect(found(['10 zones of 1 m', '10 zones of 31 m'])).toEqual(['W_UNUSUAL loop'])
})

test('a speed below a metre a minute is told', () => {
  const slow = (speed: string): string[] => found(['12 m/min', speed], ['40 s ± 10 %', '90 s ± 10 %'])
  expect(slow('0.9 m/min')).toEqual(['W_UNUSUAL drive.speed'])
  expect(slow('1 m/min')).toEqual([])
})
