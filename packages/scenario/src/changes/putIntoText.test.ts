import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readScenario } from '../read.ts'
import { putIntoText } from './putIntoText.ts'

const demo = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')

test('a value is put in with where it comes from, and the rest reads as before', () => {
  const text = putIntoText(demo, [
    {
      path: 'stations.S4.work.wire',
      value: '{ byVariant: { small: 50 s ± 15 %, medium: 52 s, large: 58 s, coastal: 64 s } }',
      from: 'times.csv, 40 times',
    },
    { path: 'stops.crane', value: '{ at: line, after: exponential 2 h, lasts: 3 min }', from: 'stops.csv' },
  ])!
  expect(text).toContain('# times.csv, 40 times\n')
  expect(text).toContain('# no place to wait: a carrier enters only if it can leave at once')
  const { scenario, problems } = readScenario(text)
  expect(problems).toEqual([])
  const before = readScenario(demo).scenario!
  expect(scenario!.line.stations.map(({ name }) => name)).toEqual(before.line.stations.map(({ name }) => name))
  expect(scenario!.line.breakdowns.map(({ name }) => name)).toContain('crane')
  expect(scenario!.line.stations[0]).toEqual(before.line.stations[0])
})

test('a path through what is no map, and a comment over two lines', () => {
  expect(putIntoText('a: [1]\n', [{ path: 'a.b.c', value: '1', from: '' }])).toBeNull()
  expect(putIntoText('a: 1\n', [{ path: 'a', value: '2', from: 'x\ny: 3' }])).toBe('a: 2 # x y: 3\n')
})
