import { describe, expect, test } from 'vitest'
import { textTable } from './textTable.ts'

const cells = (text: string) => textTable(text, 't.csv').rows.map((row) => row.cells.map((cell) => cell.text))

describe('what parts the cells', () => {
  test.each([
    [
      'semicolons with decimal commas',
      'task;s\na;1,5\nb;2,5\n',
      [
        ['task', 's'],
        ['a', '1,5'],
        ['b', '2,5'],
      ],
    ],
    [
      'tabs with decimal commas',
      'task\ts\na\t1,5\n',
      [
        ['task', 's'],
        ['a', '1,5'],
      ],
    ],
    [
      'commas, with a semicolon in a remark',
      'task,s,remark\na,1.5,tea; then on\nb,2,\n',
      [
        ['task', 's', 'remark'],
        ['a', '1.5', 'tea; then on'],
        ['b', '2', ''],
      ],
    ],
    ['one column', 'seconds\n12\n13\n', [['seconds'], ['12'], ['13']]],
    ['a title above the heads', 'Line 3 time study\ntask;s\na;1\nb;2\n', [['Line 3 time study'], ['task', 's'], ['a', '1'], ['b', '2']]],
  ])('%s', (_, text, expected) => expect(cells(text)).toEqual(expected))
})

test('a byte order mark is no part of the first head', () => expect(cells('\ufefftask;s\na;1\n')[0]).toEqual(['task', 's']))

test('lines are those of the file, blank ones and cells over two lines counted', () => {
  const { rows } = textTable('task,s\n\n"a\nb",1\r\nc,2\n\n\n', 't.csv')
  expect(rows.map(({ line, lines }) => [line, lines])).toEqual([
    [1, 1],
    [2, 1],
    [3, 2],
    [5, 1],
  ])
})

test('a quote inside a cell is a sign like any other', () => expect(cells('task,s\n5" pipe,3\n')[1]).toEqual(['5" pipe', '3']))

test('a quote that never closes is told with its line', () => {
  expect(() => textTable('task,s\na,1\n"b,2\nc,3\n', 't.csv')).toThrow('"t.csv", line 3: a quote opens here and never closes')
  expect(() => textTable(' \n', 't.csv')).toThrow('"t.csv": the file is empty')
})

test('a table without end is refused before it is parted', () => {
  expect(() => textTable('task,s\n'.repeat(200_001), 't.csv')).toThrow('"t.csv", line 200001: tables of up to 200000 lines are read')
})

test('with a quote somewhere and without one the same rows are read', () => {
  for (const text of ['a;b\n1;2;3\n\n4\n', '\ufeffa;b\r\n;;\r\n x ;\t\r\n', 'a|b\rc|d\r\r\re|f|g', 'one\ntwo\n'])
    expect(cells(text)).toEqual(cells(`${text.replace(/[\r\n]*$/, '')}\n"quoted"\n`).slice(0, -1))
})

test('a line without end is refused, with a quote and without', () => {
  expect(() => textTable(`a,b\n${'x'.repeat(1_000_001)}\n`, 't.csv')).toThrow('line 2: lines of up to 1000000 characters are read')
  expect(() => textTable(`a,b\n"${'x'.repeat(1_000_001)}\n`, 't.csv')).toThrow('line 2')
})
