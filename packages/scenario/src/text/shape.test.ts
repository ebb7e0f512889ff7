import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'

const found = (...changes: [string, string][]) =>
  readScenario(scenarioText(...changes)).problems.map((problem) => [problem.code, problem.path])

test('unknown keys everywhere, with their paths', () => {
  expect(found(['Z04,', 'Z04, colour: red, receiver: { cycles: 3 s },'], ['acceleration', 'acceleraton'], ['', 'stores: 3'])).toEqual([
    ['E_UNKNOWN_KEY', 'drive.acceleraton'],
    ['E_UNKNOWN_KEY', 'stations.Fit.colour'],
    ['E_MISSING', 'stations.Fit.receiver.cycle'],
    ['E_UNKNOWN_KEY', 'stations.Fit.receiver.cycles'],
    ['E_UNKNOWN_KEY', 'stores'],
  ])
})

test.each(['operators', 'sections', 'supply', 'inspections', 'rework', 'walks', 'repairCrews'])('%s of the wrong type', (key) => {
  expect(found(['', `${key}: red`])).toHaveLength(1)
})

test.each(['operatorsNeeded', 'receiver', 'supply', 'accepts', 'safetyStop'])('%s of the wrong type at a station', (key) => {
  expect(found(['Z04,', `Z04, ${key}: red,`]).map(([, path]) => path)).toEqual([`stations.Fit.${key}`])
})

test.each(['push', 'pull', 'takes'])('%s of the wrong type at a path', (key) => {
  expect(found(['', `paths: [{ from: Z01, ${key}: 1 }]`]).map(([, path]) => path)).toEqual([`paths[0].${key}`])
})

test('of several forms, the one that was meant is the one that is judged', () => {
  expect(found(['40 s ± 10 %', '{ kind: gamma, mean: 40 s, cv: 1e999 }'])).toEqual([['E_NOT_FINITE', 'stations.Fit.work.fit.cv']])
  expect(found(['40 s ± 10 %', '{ kind: gama, mean: 40 s }'])).toEqual([['E_CHOICE', 'stations.Fit.work.fit.kind']])
  expect(found(['40 s ± 10 %', '{ maen: 40 s, cv: 10 % }'])).toEqual([
    ['E_MISSING', 'stations.Fit.work.fit.mean'],
    ['E_UNKNOWN_KEY', 'stations.Fit.work.fit.maen'],
  ])
  expect(found(['40 s ± 10 %', '{ byVariant: { product: 40 } }'])).toEqual([['E_BARE_NUMBER', 'stations.Fit.work.fit.byVariant.product']])
  expect(found(['40 s ± 10 %', '[40 s]'])).toEqual([['E_TYPE', 'stations.Fit.work.fit']])
  expect(found(['', 'corners: { zones: [Z03], turn: left, lift: 1 s }'])).toEqual([['E_MISSING', 'corners.lower']])
  expect(found(['', 'corners: [{ zones: [Z03], turn: left, lift: 1 s, lower: 1 }]'])).toEqual([['E_BARE_NUMBER', 'corners[0].lower']])
  expect(found(['count: 4', 'count: 4, start: [7]'])).toContainEqual(['E_TYPE', 'carriers.start[0]'])
})

test('a number where a name should be is the part that has it, where there is one', () => {
  const fixes = (...changes: [string, string][]) =>
    readScenario(scenarioText(...changes)).problems.map(({ path, fix }) => `${path}: ${fix}`)
  expect(fixes(['zone: Z04', 'zone: 4'])).toEqual(['stations.Fit.zone: write a name as text, such as "Z04"'])
  expect(fixes(['zone: Z04', 'zone: 99'])).toEqual(['stations.Fit.zone: write a name as text'])
  expect(fixes(['zone: Z04', 'zone: 4.5'])).toEqual(['stations.Fit.zone: write a name as text'])
  expect(fixes(['count: 4', 'count: 4, start: [7]'])).toContain('carriers.start[0]: write a name as text, such as "Z07"')
  expect(fixes(['', 'operators: { Ann: { stations: [1] } }'])).toEqual(['operators.Ann.stations[0]: write a name as text'])
})

test('a key without a value is told apart from a missing key', () => {
  expect(found(['warmup: 1 h', 'warmup:'])).toEqual([['E_TYPE', 'warmup']])
  expect(found(['zone: Z04, ', ''])).toEqual([['E_MISSING', 'stations.Fit.zone']])
})
