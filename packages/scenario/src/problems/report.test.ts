import { expect, test } from 'vitest'
import * as say from './messages.ts'
import { createReport } from './report.ts'
import { readSource } from '../text/source.ts'

test('findings come in the order of the text, each once, with line and column from 1', () => {
  const report = createReport('first: 1\nsecond: 22\n')
  report.addAt(17, 2, 'second', say.negative('22'))
  report.addAt(7, 1, 'first', say.zero('1'))
  report.addAt(17, 2, 'second', say.negative('22'))
  expect(report.problems().map(({ code, line, column, length }) => [code, line, column, length])).toEqual([
    ['E_ZERO', 1, 8, 1],
    ['E_NEGATIVE', 2, 9, 2],
  ])
})

test('a finding ends with its line', () => {
  const report = createReport('ab\ncd\n')
  report.addAt(1, 50, '', say.listEmpty())
  expect(report.problems()[0]).toMatchObject({ line: 1, column: 2, length: 1 })
})

test('a stretch inside a text is found where the text can be followed, else the whole value', () => {
  const text = 'a: "12 kg"\nb: "12\\tkg"\n'
  const report = createReport(text)
  const root = readSource(text, report)!
  report.add(root.entries.get('a')!.value, say.leftover('kg'), 3, 2)
  report.add(root.entries.get('b')!.value, say.leftover('kg'), 3, 2)
  expect(report.problems().map(({ column, length }) => [column, length])).toEqual([
    [8, 2],
    [4, 8],
  ])
})

test('warnings are no errors', () => {
  const report = createReport('')
  report.addAt(0, 1, '', say.noLoad())
  expect(report.hasErrors()).toBe(false)
  report.addAt(0, 1, '', say.noZones())
  expect(report.hasErrors()).toBe(true)
})

test('after 200 findings one more says so, and that is all', () => {
  const report = createReport('x'.repeat(500))
  for (let i = 0; i < 400; i++) report.addAt(i, 1, '', say.zero(String(i)))
  expect(report.isFull()).toBe(true)
  expect(report.problems()).toHaveLength(201)
  expect(report.problems().at(-1)?.code).toBe('E_TOO_MANY_FINDINGS')
})
