import { expect, test } from 'vitest'
import { Document } from 'yaml'
import { flag, flow, flowList, list, map, metres, NO_REMARKS, number, seconds, text } from './nodes.ts'

const write = (node: unknown) => new Document(node).toString({ lineWidth: 0 })

test('remarks stand behind values, and behind the key of a larger part', () => {
  const style = { remarks: (path: string) => ({ 'a.b': 'default', 'a.c': 'from drive' })[path] ?? '', wide: true }
  const inner = map('a.c', style, [['d', number(1)]])
  expect(
    write(
      map('a', style, [
        ['b', seconds(2)],
        ['c', inner],
      ]),
    ),
  ).toBe('b: 2 s # default\nc: # from drive\n  d: 1\n')
})

test('absent values are left out, unknown lengths are said, names that mean something to YAML are quoted', () => {
  const style = { remarks: NO_REMARKS, wide: false }
  expect(
    write(
      map('', style, [
        ['a', null],
        ['b', metres(null)],
        ['<<', flag(true)],
        ['true', text('12')],
      ]),
    ),
  ).toBe('b: none\n"<<": true\n"true": "12"\n')
})

test('lists and maps on one line', () => {
  const style = { remarks: NO_REMARKS, wide: false }
  expect(write(list('x', style, []))).toBe('[]\n')
  expect(write(flow([['a', flowList([number(1), number(2)])]]))).toBe('{ a: [ 1, 2 ] }\n')
})

test('a key stands once in a map', () => {
  const twice = [
    ['a', number(1)],
    ['a', number(2)],
  ] as const
  expect(() => map('', { remarks: NO_REMARKS, wide: false }, twice)).toThrow('Key a already set')
})
