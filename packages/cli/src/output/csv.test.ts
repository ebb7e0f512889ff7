import { readCsv } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { csvText } from './csv.ts'

const rows = [
  ['plain', 0.1, true],
  ['a,b', -3, false],
  ['say "no"', 1e-7, null],
  ['two\nlines', 12345678.9, ' edge'],
  ['a;b', 2, null],
] as const
const table = { name: 't', columns: ['name', 'number', 'flag'], rows }

// RFC 4180: fields with commas, quotes or line breaks stand in quotes, quotes are doubled, lines end in CR LF.
test('by RFC 4180', () =>
  expect(csvText(table)).toBe(
    'name,number,flag\r\nplain,0.1,true\r\n"a,b",-3,false\r\n"say ""no""",1e-7,\r\n"two\nlines",12345678.9," edge"\r\n"a;b",2,\r\n',
  ))

test('with semicolons and decimal commas', () =>
  expect(csvText(table, 'semicolon')).toBe(
    'name;number;flag\r\nplain;0,1;true\r\n"a,b";-3;false\r\n"say ""no""";1e-7;\r\n"two\nlines";12345678,9;" edge"\r\n"a;b";2;\r\n',
  ))

test('both styles are read again, with the same numbers', () => {
  for (const style of ['comma', 'semicolon'] as const) {
    const { columns, rows: read, decimalComma } = readCsv(csvText({ name: 't', columns: ['zone', 'share'], rows: [['Z01', 0.25]] }, style))
    expect(columns).toEqual(['zone', 'share'])
    expect(read[0]!.cells).toEqual(['Z01', style === 'comma' ? '0.25' : '0,25'])
    expect(decimalComma).toBe(style === 'semicolon')
  }
})

test('a table without rows is its heading', () => expect(csvText({ name: 't', columns: ['a'], rows: [] })).toBe('a\r\n'))

// OWASP, CSV Injection: cells that begin with = + - @, tab or carriage return are taken for formulas; a single quote before them keeps them text.
describe('no cell becomes a formula', () => {
  const written = (value: string | number): string => csvText({ name: 't', columns: [], rows: [[value]] }).split('\r\n')[1]!
  test.each([
    ['=1+1', "'=1+1"],
    ['+SUM(A1)', "'+SUM(A1)"],
    ['-A1', "'-A1"],
    ['@x', "'@x"],
    ['\tx', "'\tx"],
    [' =x', "' =x"],
    ['=HYPERLINK("a","b")', `"'=HYPERLINK(""a"",""b"")"`],
  ])('text %j', (text, expected) => expect(written(text)).toBe(expected))
  test.each([[-3.5], ['-3.5'], ['+1'], ['-1,5'], ['1e-7'], ['a=b'], ['Z01-Z02']])('%j stays as it is', (value) =>
    expect(written(value).replaceAll('"', '')).toBe(String(value)),
  )
})

test('headings of columns are texts, too', () => expect(csvText({ name: 't', columns: ['=a'], rows: [] })).toBe("'=a\r\n"))
