import { describe, expect, test } from 'vitest'
import { createReport } from '../problems/report.ts'
import { readSource } from './source.ts'

function read(text: string) {
  const report = createReport(text)
  const root = readSource(text, report)
  return { root, codes: report.problems().map((problem) => problem.code) }
}

describe('texts that are hostile or broken give a finding, never an exception', () => {
  test.each<[string, string, string]>([
    ['ten million characters', '# x\n'.repeat(2_600_000), 'E_TOO_LARGE'],
    ['a list of a hundred thousand', `a: [${'1,'.repeat(100_000)}]`, 'E_TOO_MANY_PARTS'],
    ['brackets ten thousand deep', '['.repeat(10_000), 'E_TOO_DEEP'],
    ['braces ten thousand deep', '{a: '.repeat(10_000), 'E_TOO_DEEP'],
    ['dashes ten thousand deep', '- '.repeat(10_000), 'E_TOO_DEEP'],
    ['question marks ten thousand deep', '? '.repeat(10_000), 'E_TOO_DEEP'],
    ['maps a thousand deep by indentation', Array.from({ length: 1000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), 'E_TOO_DEEP'],
    ['an anchor in a circle', 'a: &x { b: *x }', 'E_ALIAS_CYCLE'],
    ['an anchor in a circle through a list', 'a: &x [1, [*x]]', 'E_ALIAS_CYCLE'],
    ['an anchor in a circle by merging', 'a: &x\n  <<: *x\n', 'E_ALIAS_CYCLE'],
    [
      'laughs by the billion',
      `a: &a [${'x,'.repeat(9)}]\n${[...'bcdefghij'].map((c, i) => `${c}: &${c} [${`*${'abcdefghi'[i]},`.repeat(9)}]`).join('\n')}`,
      'E_ALIAS_SIZE',
    ],
    ['a duplicate key', 'a: 1\nb: 2\na: 3', 'E_DUPLICATE_KEY'],
    ['a tag', 'a: !!binary aGk=', 'E_TAG'],
    ['a tag nobody knows', 'a: !x 1', 'E_TAG'],
    ['an unknown anchor', 'a: *b', 'E_ALIAS_UNKNOWN'],
    ['an unclosed quote', 'a: "b', 'E_YAML'],
    ['bytes of something else', '\u0000\u0001\u0002', 'E_NOT_A_SCENARIO'],
    ['an empty text', '', 'E_NOT_A_SCENARIO'],
    ['blanks', '  \n \n', 'E_NOT_A_SCENARIO'],
    ['a list', '- a\n- b', 'E_NOT_A_SCENARIO'],
    ['two documents', 'a: 1\n---\nb: 2\n', 'E_SEVERAL_DOCUMENTS'],
    ['a key that is a list', '[a]: 1', 'E_KEY'],
  ])('%s', (_, text, code) => {
    expect(read(text).codes).toContain(code)
  })
})

describe('a tree that knows its places', () => {
  test('values, keys and texts point at their own characters', () => {
    const text = 'a: { b: "x y", c: 12 }\n'
    const a = read(text).root!.entries.get('a')!.value
    const b = a.entries.get('b')!
    expect(text.slice(b.keyStart, b.keyEnd)).toBe('b')
    expect(text.slice(b.value.start, b.value.end)).toBe('"x y"')
    expect(text.slice(b.value.textStart!, b.value.textStart! + 3)).toBe('x y')
    expect(a.entries.get('c')!.value).toMatchObject({ kind: 'number', value: 12, source: '12', path: 'a.c' })
  })
  test('YAML 1.2: yes, 12:30 and dates are texts, numbers and true are not', () => {
    const { root } = read('a: yes\nb: 12:30\nc: 2026-01-01\nd: 017\ne: true\nf: .inf\n')
    expect([...root!.entries.values()].map(({ value }) => [value.kind, value.value])).toEqual([
      ['text', 'yes'],
      ['text', '12:30'],
      ['text', '2026-01-01'],
      ['number', 17],
      ['boolean', true],
      ['number', Number.POSITIVE_INFINITY],
    ])
  })
  test('keys keep their order and their spelling', () => {
    expect([...read('10: a\n2: b\n007: c\nx: d\n').root!.entries.keys()]).toEqual(['10', '2', '007', 'x'])
  })
  test('JSON is read as it is', () => {
    expect(read('{\n\t"a": [1, {"b": null}]\n}\n').codes).toEqual([])
  })
})
