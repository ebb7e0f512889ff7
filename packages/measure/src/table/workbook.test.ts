import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { workbookBytes } from '../../../../tests/helpers/workbook.ts'
import { workbookTable } from './workbook.ts'

const read = (parts: Parameters<typeof workbookBytes>[0], sheet?: string) => workbookTable(workbookBytes(parts), 'w.xlsx', sheet)

test('numbers, texts, errors and formulas, whose values as saved are read', () => {
  const table = read({
    rows: [
      ['task', 's'],
      ['wire', 45.5],
      ['wire', { inside: '<f>1+44</f><v>45</v>' }],
      ['wire', { type: 'e', inside: '<v>#N/A</v>' }],
    ],
  })
  expect(table.rows.map(({ cells }) => cells.at(-1)?.kind)).toEqual(['text', 'number', 'number', 'error'])
  expect(table.rows[2]!.cells[1]).toMatchObject({ value: 45, formula: true })
  expect(table.notes).toEqual(['sheet "Times"', '1 cells are formulas: their values as last saved are read, nothing is computed'])
})

test('clock times, lengths of time and days of both epochs', () => {
  // 2026-11-03 06:12 is day 46329 of the 1900 dates as spreadsheets show them
  const serial = 46329 + (6 * 60 + 12) / 1440
  const rows = [
    [
      { style: 1, inside: `<v>${65 / 86400}</v>` },
      { style: 2, inside: `<v>${65 / 1440}</v>` },
      { style: 3, inside: `<v>${serial}</v>` },
    ],
  ]
  const formats = ['[m]:ss', 'h:mm', 'yyyy-mm-dd hh:mm']
  const [elapsed, clock, day] = read({ rows, formats }).rows[0]!.cells
  expect(elapsed).toEqual({ kind: 'time', text: '0:01:05', value: 65 })
  expect(clock).toEqual({ kind: 'time', text: '1:05:00', value: 3900, hoursAndMinutes: true })
  expect(day).toMatchObject({ kind: 'date', text: '2026-11-03 06:12:00' })
  const old = read({ rows: [[{ style: 3, inside: `<v>${serial - 1462}</v>` }]], formats, date1904: true })
  expect(old.rows[0]!.cells[0]).toMatchObject({ text: '2026-11-03 06:12:00' })
  expect(old.notes).toContain('dates count from 1904')
})

test('texts merged downwards stand for their rows, numbers never', () => {
  const table = read({
    rows: [
      ['task', 's'],
      ['wire', 1],
      [null, 2],
      [null, 3],
    ],
    merges: ['A2:A3', 'B2:B4'],
  })
  expect(table.rows.map(({ cells }) => cells[0]!.text)).toEqual(['task', 'wire', 'wire', ''])
  expect(table.rows[3]!.cells[1]!.value).toBe(3)
})

test('sheets are named; those not read are told', () => {
  const parts = { rows: [], more: { Data: [['x']], Other: [['y']] } }
  expect(read(parts).notes).toEqual(['sheet "Data"', 'not read: the sheets "Times", "Other"'])
  expect(read(parts, 'Other').rows[0]!.cells[0]!.text).toBe('y')
  expect(() => read(parts, 'Datum')).toThrow('there is no sheet "Datum"; there are "Times", "Data", "Other"')
})

test('what is damaged, no workbook, or asks for other files is refused', () => {
  expect(() => workbookTable(workbookBytes({ rows: [['x']] }).slice(0, 300), 'w.xlsx')).toThrow('it cannot be unpacked')
  expect(() => workbookTable(zipSync({ 'a.txt': new Uint8Array([65]) }), 'w.xlsx')).toThrow('no workbook')
  const text = (xml: string) => new TextEncoder().encode(xml)
  const entity = {
    'xl/workbook.xml': text('<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/hostname">]><workbook><sheets>&b;</sheets></workbook>'),
  }
  expect(() => workbookTable(zipSync(entity), 'w.xlsx')).toThrow('"xl/workbook.xml" in it is damaged')
})

test('a row with a number that is none is told as it is written', () => {
  const parts = unzipSync(workbookBytes({ rows: [['task', 's']] }))
  const sheet = (number: string): Uint8Array => {
    const xml = strFromU8(parts['xl/worksheets/sheet1.xml']!).replace('r="1"', `r="${number}"`)
    return zipSync({ ...parts, 'xl/worksheets/sheet1.xml': strToU8(xml) })
  }
  for (const number of ['x', '-1', '0', '1.5', '1e999'])
    expect(() => workbookTable(sheet(number), 't.xlsx')).toThrow(`a row of it has the number "${number}"`)
  expect(() => workbookTable(sheet('300000'), 't.xlsx')).toThrow('rows up to 200000 are read')
})

test('a part that would unpack to more than 40 MB is not unpacked', { tags: 'long' }, () => {
  const bomb = zipSync({ 'xl/workbook.xml': new Uint8Array(41 * 2 ** 20) })
  expect(bomb.length).toBeLessThan(100_000)
  expect(() => workbookTable(bomb, 'w.xlsx')).toThrow('larger than 40 MB')
})
