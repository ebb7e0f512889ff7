import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { createReport, type Report } from '../problems/report.ts'
import { readScenario, readTree } from '../read.ts'
import { readSource } from '../text/source.ts'
import { applyVariation, parsePath, treeWith } from './variations.ts'

const demo = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
const codes = (variations: string) => readScenario(scenarioText(['', `variations: ${variations}`])).problems.map((problem) => problem.code)

describe('paths', () => {
  test.each([
    ['drive.speed', ['drive', 'speed']],
    ['corners[0].zones[2]', ['corners', 0, 'zones', 2]],
    ['stations."S 1.2".zone', ['stations', 'S 1.2', 'zone']],
    ['stations.Fan deck.zone', ['stations', 'Fan deck', 'zone']],
  ])('%s', (path, steps) => {
    expect(parsePath(path)).toEqual(steps)
  })
  test.each(['', '.', 'a..b', '[0]', 'a[x]', 'a[-1]', 'a."b', 'a.'])('%j is none', (path) => {
    expect(parsePath(path)).toBeNull()
  })
})

test('values are put in, comments stay, the name says which variation, the variations go', () => {
  const { text, problems } = applyVariation(demo, 'train')
  expect(problems).toEqual([])
  const { scenario, notes } = readScenario(text!)
  expect(scenario?.name).toBe('Outdoor-unit base line, train')
  expect(scenario?.line.staggerSeconds).toBe(0.3)
  expect(scenario?.line.zones.flatMap((zone, i) => (zone.release === 'single' ? [i + 1] : []))).toEqual([8, 9, 10, 11, 19, 20, 21, 22])
  expect(text).toContain('# the first one fills the line')
  expect(notes?.variations).toEqual([])
})

test('nothing else changes', () => {
  const base = readScenario(demo).scenario!.line
  const changed = readScenario(applyVariation(demo, 'fan deck next to wiring').text!).scenario!.line
  const moved = base.stations.map((station) => (station.name === 'S5' ? { ...station, zone: 13 } : station))
  expect(changed).toEqual({ ...base, stations: moved })
})

test('a value may be of any form, also a map or a list, and a place in a list', () => {
  const text = scenarioText(
    [
      '',
      'variations: { x: { carriers.start: [Z01, Z02, Z03, Z05], stations.Fit.work.fit: { kind: gamma, mean: 40 s, cv: 0.2 }, "paths[0].move": 9 s } }',
    ],
    ['', 'paths: [{ from: Z02, move: 7 s }]'],
  )
  const { line } = readScenario(applyVariation(text, 'x').text!).scenario!
  expect(line.carriers.start).toEqual([0, 1, 2, 4])
  expect(line.stations[1]?.work?.[0]?.seconds[0]).toEqual({ kind: 'gamma', mean: 40, cv: 0.2 })
  expect(line.paths[1]?.moveSeconds).toEqual({ kind: 'constant', value: 9 })
})

test('an unknown name is told with the known ones', () => {
  expect(applyVariation(demo, 'trian').problems).toMatchObject([{ code: 'E_UNKNOWN_VARIATION', fix: 'did you mean "train"?' }])
  expect(applyVariation(scenarioText(), 'any').problems).toMatchObject([{ code: 'E_UNKNOWN_VARIATION', fix: 'the file has none' }])
  expect(applyVariation('[', 'any')).toMatchObject({ text: null, problems: [{ code: 'E_YAML' }] })
})

test('variations are tried when the file is read', () => {
  expect(codes('{ a: { carriers.count: 9 } }')).toEqual([])
  expect(codes('{ a: { carriers.count: 10 } }')).toEqual(['E_VARIATION'])
  expect(codes('{ a: { carriers.length.x: 1 m } }')).toEqual(['E_VARIATION'])
  expect(codes('{ a: { "paths[3].move": 1 s } }')).toEqual(['E_VARIATION'])
  expect(codes('{ a: { format: 2 } }')).toEqual(['E_PATH_NOWHERE'])
  expect(codes('{ a: { drive..speed: 2 m/s } }')).toEqual(['E_PATH'])
  expect(codes('{ a: 5 }')).toEqual(['E_TYPE'])
})

test('a name with a comma, and a reserved word on the way, are refused', () => {
  expect(codes('{ "a, b": { carriers.count: 9 } }')).toEqual(['E_VARIATION_NAME'])
  expect(codes('{ a: { stations.__proto__.zone: Z02 } }')).toEqual(['E_KEY_RESERVED'])
})

test('tried on what was read, a variation has the findings that its text has', { tags: 'long' }, () => {
  const wrong = [
    '{ drive.speed: 12 }',
    '{ drive.speed: 12 m/min, carriers.count: 400 }',
    '{ stations.S1: { zone: Z99, work: { a: 5 s } } }',
    '{ stations.S1.zone: Z99 }',
    '{ stations.S1.work.place.more: 5 s }',
    '{ stations.S9: { zone: Z02, work: { glue: 5 s } } }',
    '{ stops.new: { at: [S1, X], after: exponential 1 h, lasts: 1 min } }',
    '{ "corners[0].lift": 5 s }',
    '{ "corners[9].lift": 5 s }',
    '{ calendar: none }',
    '{ name: 5 }',
    '{ length: 0 min }',
    '{ warmup: 3 h, length: 0.1 h }',
    '{ products.variants: { A: 30 %, B: 80 % } }',
    '{ carriers: 5 }',
    '{ carriers: { count: 5 } }',
    '{ loop: 3 zones of 1 m }',
  ]
  let found = 0
  for (const text of [scenarioText(), demo]) {
    for (const change of wrong) {
      const whole = `${text.replace(/^variations:[\s\S]*/m, '')}\nvariations:\n  odd: ${change}\n`
      const told = (report: Report): string[] =>
        report
          .problems()
          .filter(({ severity }) => severity === 'error')
          .map(({ code, path, message }) => `${code} ${path} ${message}`)
          .sort()
      const root = readSource(whole, createReport(whole))!
      const variation = root.entries.get('variations')!.value.entries.get('odd')!
      const tree = treeWith(root, variation)
      const varied = applyVariation(whole, 'odd').text
      if (tree === null || varied === null) {
        expect(`${change}: ${tree === null && varied === null}`).toBe(`${change}: true`)
        continue
      }
      const [quick, slow] = [createReport(whole), createReport(varied)]
      readTree(tree, quick, {}, null)
      readTree(readSource(varied, slow)!, slow, {}, null)
      expect(told(quick), change).toEqual(told(slow))
      found += told(quick).length
    }
  }
  expect(found).toBeGreaterThan(20)
})
