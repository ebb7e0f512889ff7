import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { scenarioDifferences } from './differences.ts'
import { readScenario } from './read.ts'
import { applyVariation } from './variations.ts'

const text = readFileSync(new URL('../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
const read = (from: string) => readScenario(from, 'line.yaml').scenario!
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
