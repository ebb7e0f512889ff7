import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

const read = (text: string, ...changes: [string, string][]) => readScenario(scenarioText(['', text], ...changes))

test('operators cover stations in the order written, and stand at the first unless said; walks go both ways', () => {
  const { scenario } = read(
    'operators: { anna: { stations: [Fit, Load] }, ben: { stations: [Load], start: Unload } }\nwalks: [{ between: [Load, Fit], lasts: 8 s }]',
  )
  expect(scenario!.line.operators).toEqual([
    { name: 'anna', stations: [1, 0], start: 1 },
    { name: 'ben', stations: [0], start: 2 },
  ])
  expect(scenario!.line.walks).toEqual([{ between: [0, 1], seconds: 8 }])
})

test('people needed: none at an automatic station, else one unless said; more than cover it is doubtful', () => {
  expect(read('', ['Z04,', 'Z04, operatorsNeeded: 2,']).scenario!.line.stations.map((station) => station.operatorsNeeded)).toEqual([
    1, 2, 1,
  ])
  expect(read('operators: { anna: { stations: [Fit] } }', ['Z04,', 'Z04, operatorsNeeded: 2,']).problems.map(({ code }) => code)).toEqual([
    'W_OPERATORS_FEW',
  ])
  expect(
    read('defaults: { station: { operatorsNeeded: 2 } }', ['Z04,', 'Z04, automatic: true,']).scenario!.line.stations.map(
      (s) => s.operatorsNeeded,
    ),
  ).toEqual([2, 0, 2])
})
