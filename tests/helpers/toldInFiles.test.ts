import { tableOf, type TableValue } from '@loopwright/charts/table'
import { expect, test } from 'vitest'
import { type Cell, tableCell } from '../../packages/notebook/src/cells/cell.ts'
import { missingInFiles } from './toldInFiles.ts'

const table = (text: string, value: TableValue, name = 'units', says = 'units'): Cell[] => [
  tableCell('t', tableOf({ caption: 'T', columns: [{ head: 'Head', text: () => text, data: [[name, says, () => value]] }], rows: [0] })),
]

test('a number that is rounded is in the file, another is not', () => {
  expect(missingInFiles(table('332', 332.4))).toEqual([])
  expect(missingInFiles(table('333', 332.4))).toEqual(['t, Head, 333'])
  expect(missingInFiles(table('1\u202f234.5', 1234.46))).toEqual([])
  expect(missingInFiles(table('12', null))).toEqual(['t, Head, 12'])
  expect(missingInFiles(table('−0.4', -0.36))).toEqual([])
  expect(missingInFiles(table('0.4', -0.36))).toHaveLength(1)
})

test('shares in per cent, seconds in minutes, "< 1" and names are read as what they are', () => {
  expect(missingInFiles(table('83\u202f%', 0.833, 'share', 'share, 0 … 1'))).toEqual([])
  expect(missingInFiles(table('83\u202f%', 0.833))).toHaveLength(1)
  expect(missingInFiles(table('1.5', 90, 'lap_s', 'lap'))).toEqual([])
  expect(missingInFiles(table('1.5', 90))).toHaveLength(1)
  expect(missingInFiles(table('< 1', 0.004, 'share', 'share, 0 … 1'))).toEqual([])
  expect(missingInFiles(table('< 1', 0.02, 'share', 'share, 0 … 1'))).toHaveLength(1)
  expect(missingInFiles(table('278–279', 280, 'units_below'))).toEqual(['t, Head, 278–279'])
  expect(missingInFiles(table('S6 Test', 'S6'))).toEqual([])
})

test('a mean with its half-width is that of the limits in the file', () => {
  const of = (text: string): Cell[] => {
    const data = [
      ['units', 'mean', () => 331.6] as const,
      ['units_low', 'low', () => 320] as const,
      ['units_high', 'high', () => 341] as const,
    ]
    return [tableCell('t', tableOf({ caption: 'T', columns: [{ head: 'Units', text: () => text, data }], rows: [0] }))]
  }
  expect(missingInFiles(of('332 ± 12'))).toEqual([])
  expect(missingInFiles(of('330 ± 10'))).toEqual([])
  expect(missingInFiles(of('332 ± 9'))).toHaveLength(1)
  expect(missingInFiles(of('340 ± 10'))).toHaveLength(1)
})
