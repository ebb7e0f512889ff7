/** Workbooks (.xlsx): archives spoilt byte by byte, and right archives of spoilt parts. */
import { readTable } from '@loopwright/measure'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { ORDERS, STOPS, TIMES_WORKBOOK } from '../../helpers/shopTables.ts'
import { workbookBytes } from '../../helpers/workbook.ts'
import { mutated, one, type Whole } from '../mutated.ts'
import { type Reader, takenOrRefused } from '../reader.ts'
import { ordersOf, stopsOf, timesOf } from './tables.ts'

const rowsOf = (text: string): string[][] =>
  text
    .trim()
    .split('\n')
    .map((line) => line.split(','))
const WORKBOOKS = [
  TIMES_WORKBOOK,
  workbookBytes({ rows: rowsOf(STOPS) }),
  workbookBytes({ rows: rowsOf(ORDERS), more: { Other: [['a', 1]] }, hidden: [2] }),
  workbookBytes({
    rows: [
      ['task', 'seconds', 'when'],
      ['fit', 45.5, { style: 1, inside: '<v>46000.25</v>' }],
      ['fit', { style: 2, inside: '<f>A1+1</f><v>0.0005</v>' }, null],
    ],
    merges: ['A2:A3'],
    date1904: true,
    formats: ['yyyy-mm-dd', 'mm:ss.0'],
  }),
]

const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')

/** A workbook with one of its parts spoilt, packed again. */
function spoiltPart(bytes: Uint8Array, whole: Whole): Uint8Array {
  const parts = unzipSync(bytes)
  const names = Object.keys(parts)
  const name = one(names, whole)
  const texts = names.map((each) => strFromU8(parts[each]!))
  return zipSync({ ...parts, [name]: strToU8(mutated(strFromU8(parts[name]!), texts, whole)) })
}

export const workbook: Reader = {
  texts: [latin(WORKBOOKS[0]!)],
  every: 1,
  spoil(whole) {
    const bytes = one(WORKBOOKS, whole)
    if (whole(3) > 0) return latin(spoiltPart(bytes, whole))
    const spoilt = mutated(latin(bytes), WORKBOOKS.map(latin), whole)
    return spoilt.replaceAll(/[^\0-\u00ff]/g, '?')
  },
  try(text) {
    const bytes = new Uint8Array(Buffer.from(text, 'latin1'))
    for (const sheet of [undefined, 'Monday', '__proto__'])
      takenOrRefused(() => {
        readTable(bytes, 'times.xlsx', sheet === undefined ? {} : { sheet })
        return null
      })
    return [timesOf, stopsOf, ordersOf].map((read) => takenOrRefused(() => read(bytes))).find((fault) => fault !== null) ?? null
  },
}
