import { expect, test } from 'vitest'
import { plain } from './located.ts'
import { createReport } from '../problems/report.ts'
import { readSource } from './source.ts'

function read(text: string) {
  const report = createReport(text)
  const root = readSource(text, report)
  return { value: root === null ? null : plain(root), problems: report.problems() }
}

test('references give the value, as often as they stand', () => {
  expect(read('a: &x { m: 1 }\nb: *x\nc: [*x, *x]\n').value).toEqual({ a: { m: 1 }, b: { m: 1 }, c: [{ m: 1 }, { m: 1 }] })
})

test('an anchor marked again counts from there on', () => {
  expect(read('a: &x 1\nb: *x\nc: &x 2\nd: *x\n').value).toEqual({ a: 1, b: 1, c: 2, d: 2 })
})

test('merged keys come after own ones and never replace them', () => {
  expect(read('base: &b { m: 1, n: 2 }\nown:\n  n: 3\n  <<: *b\n').value).toEqual({ base: { m: 1, n: 2 }, own: { n: 3, m: 1 } })
  expect(read('own: { "<<": 5 }\n').value).toEqual({ own: { '<<': 5 } })
  expect(read('own: { <<: 5 }\n').problems.map((problem) => problem.code)).toEqual(['E_TYPE'])
})

test('a comma inside braces that tore a decimal apart is named as that', () => {
  const { problems } = read('drive: { speed: 12,5 m/min, x: 1 }\n')
  expect(problems).toMatchObject([
    { code: 'E_DECIMAL_COMMA', path: 'drive.speed', line: 1, column: 17, length: 10, fix: 'write "12.5 m/min"' },
  ])
})

test('a duplicate key names the line of the first', () => {
  expect(read('a: 1\n\nb: 1\na: 2\n').problems).toMatchObject([
    { code: 'E_DUPLICATE_KEY', line: 4, fix: 'it was given on line 1; keep one of the two' },
  ])
})

test('a broken value is reported once, not again as a wrong type', () => {
  expect(read('a: { <<: *no }\n').problems.map((problem) => problem.code)).toEqual(['E_ALIAS_UNKNOWN'])
})
