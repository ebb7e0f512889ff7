import { expect, test } from 'vitest'
import { csvText } from './csv.ts'

// RFC 4180: fields with commas, quotes or line breaks stand in quotes, quotes are doubled, lines end in CR LF.
test('by RFC 4180', () => {
  const rows = [
    ['plain', 0.1, true],
    ['a,b', -3, false],
    ['say "no"', 1e-7, null],
    ['two\nlines', 12345678.9, ' edge'],
  ] as const
  expect(csvText({ name: 't', columns: ['name', 'number', 'flag'], rows })).toBe(
    'name,number,flag\r\nplain,0.1,true\r\n"a,b",-3,false\r\n"say ""no""",1e-7,\r\n"two\nlines",12345678.9," edge"\r\n',
  )
})

test('a table without rows is its heading', () => expect(csvText({ name: 't', columns: ['a'], rows: [] })).toBe('a\r\n'))
