import { expect, test } from 'vitest'
import { readTable, TABLE_BYTES_MAX } from './bytes.ts'

const bytes = (text: string) => new TextEncoder().encode(text)
const first = (data: Uint8Array) => readTable(data, 't').rows[0]!.cells.map(({ text }) => text)

test('encodings by their bytes', () => {
  expect(first(bytes('Tätigkeit;s\na;1'))).toEqual(['Tätigkeit', 's'])
  expect(first(Uint8Array.from([0x54, 0xe4, 0x74, 0x3b, 0x73, 10, 0x61, 0x3b, 0x31]))).toEqual(['Tät', 's'])
  const wide = Uint8Array.from([0xff, 0xfe, ...[...'a;b\n1;2'].flatMap((sign) => [sign.charCodeAt(0), 0])])
  expect(first(wide)).toEqual(['a', 'b'])
})

test('what is no table says what it is', () => {
  expect(() => readTable(Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0]), 'old.xls')).toThrow('old workbook (.xls)')
  expect(() => readTable(bytes('%PDF-1.7'), 'x.csv')).toThrow('a PDF file')
  expect(() => readTable(bytes('a,b\n1,\0\n'), 'x.csv')).toThrow('"x.csv", line 2: it is no text')
  expect(() => readTable(bytes('a'), 'x.csv', { sheet: 'S' })).toThrow('only a workbook has sheets')
})

test('too large is told before anything is looked at', () => {
  expect(() => readTable(new Uint8Array(TABLE_BYTES_MAX + 1), 'big.csv')).toThrow('tables of up to 20 MB are read')
})
