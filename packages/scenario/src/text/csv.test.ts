import { expect, test } from 'vitest'
import { cellNumber, readCsv } from './csv.ts'

test('separator by the header: comma, semicolon, tab', () => {
  expect(readCsv('a,b\n1,2\n')).toEqual({ columns: ['a', 'b'], rows: [{ cells: ['1', '2'], line: 2 }], decimalComma: false })
  expect(readCsv('a;b\r\n1,5;2\r\n').rows).toEqual([{ cells: ['1,5', '2'], line: 2 }])
  expect(readCsv('\uFEFFa\tb\n1\t2').columns).toEqual(['a', 'b'])
})

test('quotes as RFC 4180 has them, also with a line break inside', () => {
  const { rows } = readCsv('name,time\n"fit, front",38\n"say ""go""",40\n"two\nlines",41\n\nlast,42\n')
  expect(rows).toEqual([
    { cells: ['fit, front', '38'], line: 2 },
    { cells: ['say "go"', '40'], line: 3 },
    { cells: ['two\nlines', '41'], line: 4 },
    { cells: ['last', '42'], line: 7 },
  ])
})

test('numbers, with a decimal comma only where the separator leaves room for it', () => {
  expect(cellNumber('1,5', true)).toBe('1.5')
  expect(cellNumber('1,5', false)).toBeNull()
  expect(['38', '38.25', '1e3', '', 'x', '1.5.2', '0x10'].map((cell) => cellNumber(cell, true))).toEqual([
    '38',
    '38.25',
    '1e3',
    null,
    null,
    null,
    null,
  ])
})

test('quotes behind the first sign of a cell are signs like others, however many there are', () => {
  expect(readCsv('a;b\nx"";  "y"\n').rows[0]!.cells).toEqual(['x""', 'y'])
  const { rows } = readCsv(`a,b\n3"${'"'.repeat(400_000)},1\n`)
  expect(rows[0]!.cells.map(({ length }) => length)).toEqual([400_002, 1])
})
