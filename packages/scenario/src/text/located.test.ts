import { expect, test } from 'vitest'
import { joinPath, plain, describe as words } from './located.ts'
import { createReport } from '../problems/report.ts'
import { readSource } from './source.ts'

const read = (text: string) => readSource(text, createReport(text))!

test('paths quote names that would be misread', () => {
  expect(joinPath('', 'stations')).toBe('stations')
  expect(joinPath('stations', 'S 1')).toBe('stations.S 1')
  expect(joinPath('stations', 'S.1')).toBe('stations."S.1"')
  expect(joinPath('stations', 'a[0]')).toBe('stations."a[0]"')
})

test('what was found, in words', () => {
  const { entries } = read('a: 5\nb: [1]\nc: { d: 1 }\ne: ~\nf: text\ng: true\n')
  expect([...entries.values()].map((entry) => words(entry.value))).toEqual([
    'the number 5',
    'a list',
    'a set of keys',
    'nothing',
    'the text "text"',
    '"true"',
  ])
})

test('plain values keep any key as a key', () => {
  const value = plain(read('toString: 1\nconstructor: [2, { x: 3 }]\n')) as Record<string, unknown>
  expect(Object.keys(value)).toEqual(['toString', 'constructor'])
  expect(value.constructor).toEqual([2, { x: 3 }])
  expect(Object.getPrototypeOf(value)).toBeNull()
})
