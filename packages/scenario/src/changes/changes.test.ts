import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenarioWith } from './changes.ts'
import { formatProblems } from '../problems/formatProblems.ts'
import { readScenario } from '../read.ts'
import { applyVariation } from './variations.ts'

const demo = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
const small = scenarioText()
const wrong = (changes: Record<string, string>, text = small) => readScenarioWith(text, changes, { changePrefix: '--set ' }).problems

test('without changes it is the file', () => {
  const { values: _, ...read } = readScenario(demo)
  expect(readScenarioWith(demo, {})).toMatchObject(read)
})

test('the line is that of a file with the new values in it', () => {
  const { scenario, problems } = readScenarioWith(small, {
    'drive.speed': '15 m/min',
    'carriers.count': 5,
    'stations.Fit.zone': 'Z05',
  })
  expect(problems).toEqual([])
  expect(scenario).toEqual(readScenario(scenarioText(['12 m/min', '15 m/min'], ['count: 4', 'count: 5'], ['Z04', 'Z05'])).scenario)
})

test('it is what a variation with the same paths gives, but for the name', () => {
  const train = { 'drive.release': 'train', 'drive.stagger': '0.3 s' }
  const text = `${small}variations: { train: { drive.release: train, drive.stagger: 0.3 s } }\n`
  const varied = readScenario(applyVariation(text, 'train').text!).scenario!
  expect(readScenarioWith(text, train).scenario).toEqual({ ...varied, name: 'Ten zones' })
})

test('a value may be of any form, as text or as data, and stand at a place in a list', () => {
  const text = scenarioText(['', 'paths: [{ from: Z02, move: 7 s }]'])
  const asText = { 'carriers.start': '[Z01, Z02, Z03, Z05]', 'stations.Fit.work.fit': '{ kind: gamma, mean: 40 s, cv: 0.2 }' }
  const asData = { 'carriers.start': ['Z01', 'Z02', 'Z03', 'Z05'], 'stations.Fit.work.fit': { kind: 'gamma', mean: '40 s', cv: 0.2 } }
  const { line } = readScenarioWith(text, { ...asData, 'paths[0].move': '9 s' }).scenario!
  expect(line.carriers.start).toEqual([0, 1, 2, 4])
  expect(line.paths[1]?.moveSeconds).toEqual({ kind: 'constant', value: 9 })
  expect(readScenarioWith(text, { ...asText, 'paths[0].move': '9 s' }).scenario!.line).toEqual(line)
})

test('keys that are missing on the way are made, also within another change', () => {
  const { scenario, problems } = readScenarioWith(small, {
    'stops.jam': '{ at: Z03, after: 2 h, lasts: 1 min }',
    'stops.jam.lasts': '2 min',
  })
  expect(problems).toEqual([])
  expect(scenario?.line.breakdowns[0]?.repairSeconds).toEqual({ kind: 'constant', value: 120 })
})

describe('what is wrong is told', () => {
  test('inside a changed value: with the change, and its own column', () => {
    const problems = wrong({ 'carriers.count': '3', 'drive.speed': '12 m/mn' })
    expect(problems).toMatchObject([
      { code: 'E_UNIT_UNKNOWN', path: 'drive.speed', change: '--set drive.speed=12 m/mn', line: 1, column: 22, length: 4 },
    ])
    expect(formatProblems(problems, small, 'x.yaml').split('\n').slice(0, 4)).toEqual([
      'x.yaml with a change  E_UNIT_UNKNOWN  drive.speed',
      '  "m/mn" is not a known unit',
      '        | --set drive.speed=12 m/mn',
      `        | ${' '.repeat(21)}^^^^`,
    ])
  })

  test.each([
    [{ 'drive.speed': '12' }, 'E_BARE_NUMBER', 'drive.speed'],
    [{ 'drive.sped': '12 m/min' }, 'E_UNKNOWN_KEY', 'drive.sped'],
    [{ 'driv.speed': '12 m/min' }, 'E_PATH_NOWHERE', 'driv.speed'],
    [{ 'drive..speed': '12 m/min' }, 'E_PATH', 'drive..speed'],
    [{ 'drive.speed.x': '12 m/min' }, 'E_PATH_NOWHERE', 'drive.speed.x'],
    [{ 'paths[3].move': '1 s' }, 'E_PATH_NOWHERE', 'paths[3].move'],
    [{ 'carriers.count': '[1, 2' }, 'E_YAML', 'carriers.count'],
    [{ 'carriers.count': '' }, 'E_TYPE', 'carriers.count'],
    [{ 'carriers.count': '&a 5' }, null, 'carriers.count'],
    [{ 'carriers.count': '*a' }, 'E_ALIAS_UNKNOWN', 'carriers.count'],
    [{ variations: '{}' }, 'E_PATH_NOWHERE', 'variations'],
    [{ 'stations.__proto__.zone': 'Z02' }, 'E_KEY_RESERVED', 'stations.__proto__.zone'],
    [{ 'stations.Fit.zone': 'Z99' }, 'E_UNKNOWN_ZONE', 'stations.Fit.zone'],
  ])('%j', (changes, code, path) => {
    const problems = wrong(changes)
    expect(problems.map((problem) => [problem.code, problem.path, problem.change?.startsWith(`--set ${path}`)])).toEqual(
      code === null ? [] : [[code, path, true]],
    )
  })

  test('elsewhere in the file: at its own line, with the change named', () => {
    const problems = wrong({ loop: '6 zones of 1 m', 'carriers.count': '3' })
    expect(problems).toMatchObject([{ code: 'E_UNKNOWN_ZONE', path: 'stations.Unload.zone', line: 12 }])
    expect(problems[0]!.message).toBe('there is no zone called "Z08" (with --set loop=6 zones of 1 m and --set carriers.count=3)')
    expect(problems[0]).not.toHaveProperty('change')
  })

  test('what the file has without the change does not name it', () => {
    const text = scenarioText(['Z08', 'Z88'])
    expect(wrong({ 'carriers.count': '3' }, text)).toEqual(readScenario(text).problems)
    expect(wrong({ 'carriers.count': '3' }, '[').map(({ code }) => code)).toEqual(['E_YAML'])
  })

  test('in a value of several lines, by its line', () => {
    expect(wrong({ carriers: 'count: 4\nlength: 0.8 mm m\n' })).toMatchObject([{ line: 2, column: 15, path: 'carriers.length' }])
  })
})
