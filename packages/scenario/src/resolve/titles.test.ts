import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'

const codes = (...changes: [string, string][]): string[] =>
  readScenario(scenarioText(...changes)).problems.map(({ code, path }) => `${code} ${path}`)
const stop = (name: string, title: string): string => `  ${name}: { title: ${title}, at: Fit, after: 1 h, lasts: 1 min }\n`

test('two parts of a kind cannot be shown alike, whether by title or by name', () => {
  expect(codes(['', `stops:\n${stop('a', 'Jam')}${stop('b', 'Jam')}`])).toEqual(['E_DUPLICATE_TITLE stops.b.title'])
  expect(codes(['', `stops:\n${stop('a', 'b')}${stop('b', 'b')}`])).toEqual(['E_DUPLICATE_TITLE stops.b.title'])
  expect(codes(['', `stops:\n${stop('a', 'b')}  b: { at: Fit, after: 1 h, lasts: 1 min }\n`])).toEqual(['E_DUPLICATE_TITLE stops.b'])
  expect(codes(['', `stops:\n${stop('a', 'b')}${stop('b', 'c')}`])).toEqual([])
  expect(codes(['', `stops:\n${stop('a', 'Fit')}`])).toEqual([])
})

test('a task in two stations has one title, which may stand at either', () => {
  const twice = (first: string, second: string): [string, string][] => [
    ['fit: 40 s ± 10 %', `take: { time: 40 s${first} }`],
    ['take: 20 s ± 10 %', `take: { time: 20 s${second} }`],
  ]
  expect(codes(...twice(', title: T', ''))).toEqual([])
  expect(codes(...twice('', ', title: T'))).toEqual([])
  expect(codes(...twice(', title: T', ', title: T'))).toEqual([])
  expect(codes(...twice(', title: T', ', title: U'))).toEqual(['E_TITLE_TWICE stations.Unload.unload.take.title'])
})

test('a title is a text on one line', () => {
  for (const title of ['""', '" a"', '"a\\nb"', `"${'x'.repeat(201)}"`])
    expect(codes(['', `stops:\n${stop('a', title)}`])).toEqual(['E_TITLE stops.a.title'])
  expect(codes(['', `stops:\n${stop('a', '"5/4 inch"')}`])).toEqual([])
})
