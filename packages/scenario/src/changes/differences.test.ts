import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { scenarioDifferences } from './differences.ts'
import { readScenario } from '../read.ts'
import { applyVariation } from './variations.ts'

const text = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
const read = (from: string) => readScenario(from).scenario!
const base = read(text)
const varied = (name: string) => read(applyVariation(text, name).text!)

test('a scenario does not differ from itself, however its values are written', () => {
  expect(scenarioDifferences(base, read(text.replace('speed: 15 m/min', 'speed: 0.25 m/s')))).toEqual([])
  expect(scenarioDifferences(base, read(text.replace('Outdoor-unit base line\n', 'Another name\n')))).toEqual([])
})

test('one station moved is one difference', () => {
  expect(scenarioDifferences(base, varied('fan deck next to wiring'))).toEqual([
    { path: 'stations.S5.zone', places: [], before: 'Z15', after: 'Z14' },
  ])
})

test('the same change in many places is one difference that names them', () => {
  const found = scenarioDifferences(base, varied('train'))
  expect(found.map(({ path, before, after, places }) => [path, before, after, places.length])).toEqual([
    ['drive.stagger', '0.15 s', '0.3 s', 0],
    ['zones.*.release', 'single', 'train', 14],
  ])
  expect(found[1]!.places).not.toContain('Z08')
})

test('speeds are told per minute, times in seconds', () => {
  const faster = read(text.replace('speed: 15 m/min', 'speed: 21 m/min').replace('mean: { small: 60 s', 'mean: { small: 66 s'))
  const found = scenarioDifferences(base, faster)
  expect(found).toContainEqual(expect.objectContaining({ path: 'paths.*.speed', before: '15 m/min', after: '21 m/min' }))
  expect(found.some(({ path, after }) => path.startsWith('stations.S6.work.test') && after!.includes('66 s'))).toBe(true)
})

test('what is there in one only has no value in the other', () => {
  const calm = read(text.replace(/ {2}pipeTool:.*\n/, ''))
  const found = scenarioDifferences(base, calm)
  expect(found.length).toBeGreaterThan(0)
  for (const { path, after } of found) {
    expect(path).toMatch(/^stops\.pipeTool/)
    expect(after).toBeNull()
  }
})

test('titles are no inputs', () => {
  const text = scenarioText(['', 'stops: { jam: { at: Fit, after: 1 h, lasts: 1 min } }'])
  const titled = text
    .replace('jam: {', 'jam: { title: Jam at the fit,')
    .replace('fit: 40 s ± 10 %', 'fit: { title: Fit lid, time: 40 s ± 10 % }')
  expect(titled).not.toBe(text)
  expect(scenarioDifferences(readScenario(text).scenario!, readScenario(titled).scenario!)).toEqual([])
})

test('a loop with zones put in is one difference, also where all zones behind are numbered anew', () => {
  const longer = { path: 'loop', before: '22 zones', after: '24 zones: 2 put in before S3' }
  const added = read(`${text.replace(/variations:[\s\S]*$/, '')}putIn: { before: S3, zones: 2 }\n`)
  expect(scenarioDifferences(base, added)).toEqual([{ ...longer, places: ['Z06a', 'Z06b'] }])
  const moved = (from: string): string =>
    from.replace(/Z(\d\d)/g, (zone, number) => (Number(number) < 7 ? zone : `Z${Number(number) + 2}`.replace(/^Z(\d)$/, 'Z0$1')))
  const renumbered = moved(text.replace(/variations:[\s\S]*$/, '')).replace('loop: 22 zones', 'loop: 24 zones')
  expect(scenarioDifferences(base, read(renumbered))).toEqual([{ ...longer, places: ['Z07', 'Z08'] }])
})

test('zones taken out, and another change beside them', () => {
  const shorter = read(`${text.replace(/variations:[\s\S]*$/, '').replace('15 m/min', '18 m/min')}takeOut: [Z05, Z16]\n`)
  expect(
    scenarioDifferences(base, shorter).map(({ path, places, after }) => [
      path,
      after,
      places.length === 0 || path !== 'loop' ? [] : places,
    ]),
  ).toEqual([
    ['loop', '20 zones: 1 taken out before Z06', ['Z05']],
    ['loop', '20 zones: 1 taken out before S6', ['Z16']],
    ['paths.*.speed', '18 m/min', []],
  ])
})
