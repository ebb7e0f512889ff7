import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../tests/helpers/scenarioText.ts'
import { readScenario } from './read.ts'
import { mixGroups, stopGroups, titleOf } from './titles.ts'
import { writeScenario } from './write/write.ts'

const demo = readScenario(readFileSync(new URL('../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')).scenario!

test('people see the title of the file, or the name where it gives none', () => {
  expect(titleOf(demo, 'stop', 'testFault')).toBe('Tester fault')
  expect(titleOf(demo, 'stop', 'shortStop')).toBe('Short stop')
  expect(titleOf(demo, 'stop', 'shortStop S6')).toBe('Short stop, Tightness test')
  expect(titleOf(demo, 'stop', 'transferFault Z09')).toBe('Transfer fault, Z09')
  expect(titleOf(demo, 'station', 'S6')).toBe('Tightness test')
  expect(titleOf(demo, 'option', 'coldKit')).toBe('Cold kit')
  expect(titleOf(demo, 'variant', 'small + coldKit + quietKit')).toBe('small + Cold kit + Quiet kit')
  expect(titleOf(demo, 'task', 'wire')).toBe('wire')
  for (const kind of ['stop', 'station', 'option', 'variant', 'task'] as const) expect(titleOf(demo, kind, '__proto__')).toBe('__proto__')
})

test('one stop at several places is one group, also after the complete form; names are not cut', () => {
  const text = scenarioText([
    '',
    'stops: { robot red: { at: Fit, after: 1 h, lasts: 1 min }, robot blue: { at: Fit, after: 1 h, lasts: 1 min }, jam: { at: [Z02, Z03], after: 1 h, lasts: 1 min } }',
  ])
  const groups = [
    { name: 'robot red', sources: ['robot red'] },
    { name: 'robot blue', sources: ['robot blue'] },
    { name: 'jam', sources: ['jam Z02', 'jam Z03'] },
  ]
  const { scenario } = readScenario(text)
  expect(stopGroups(scenario!)).toEqual(groups)
  expect(scenario!.stopEntries[2]!.sources).toEqual([
    { source: 'jam Z02', place: 'Z02' },
    { source: 'jam Z03', place: 'Z03' },
  ])
  expect(stopGroups(readScenario(writeScenario(scenario!)).scenario!)).toEqual(groups)
  expect(stopGroups(readScenario(writeScenario(demo)).scenario!)).toEqual(stopGroups(demo))
})

test('variants as written and options are the groups of the mix, also after the complete form', () => {
  const groups = mixGroups(demo)
  expect(groups.map(({ name, variants }) => [name, variants.length])).toEqual([
    ['small', 4],
    ['medium', 4],
    ['large', 4],
    ['coastal', 4],
    ['Cold kit', 8],
    ['Quiet kit', 8],
  ])
  expect(groups[4]!.variants).toEqual([2, 3, 6, 7, 10, 11, 14, 15])
  expect(mixGroups(readScenario(writeScenario(demo)).scenario!)).toEqual(groups)
})

test('a title may stand wherever the part does, and changes nothing of the line', () => {
  const changes: [string, string][] = [
    ['fit: 40 s ± 10 %', 'fit: { title: Fit lid, time: 40 s ± 10 % }'],
    ['place: 30 s ± 10 %', 'place: { title: Place pan, mean: 30 s, cv: 10 % }'],
    ['take: 20 s ± 10 %', 'take: { title: Take off, byVariant: { a: 20 s ± 10 %, b: 20 s ± 10 % } }'],
    ['', 'products: { variants: { a: { share: 40 %, title: Apple }, b: 60 % } }'],
  ]
  const { scenario, problems } = readScenario(scenarioText(...changes))
  expect(problems).toEqual([])
  expect(scenario!.titles).toEqual({ tasks: { fit: 'Fit lid', place: 'Place pan', take: 'Take off' }, variants: { a: 'Apple' } })
  expect(scenario!.line).toEqual(readScenario(scenarioText(['', 'products: { variants: { a: 40 %, b: 60 % } }'])).scenario!.line)
  const listed = scenarioText(
    ['', 'tasks: [{ name: place, title: Place pan }, fit, take]'],
    ['', 'products: { variants: [{ name: a, title: Apple }, b], mix: { kind: pattern, sequence: [a, b] } }'],
  )
  expect(readScenario(listed).scenario!.titles).toEqual({ tasks: { place: 'Place pan' }, variants: { a: 'Apple' } })
})
