/** The bytes of a file as a table: what kind of file it is, by its first bytes and never by its name. */
import type { RawTable } from './rawTable.ts'
import { refusal } from './tableError.ts'
import { textTable } from './textTable.ts'
import { workbookTable } from './workbook.ts'

/** Tables of people are smaller; bytes. */
export const TABLE_BYTES_MAX = 20 * 2 ** 20

/** Which table of a file to read. */
export interface TableChoice {
  /** name of the sheet. Default: the first visible one that is not empty */
  readonly sheet?: string
}

/**
 * A table of a CSV file or of an Excel workbook (.xlsx).
 *
 * @param bytes  of the file, up to 20 MB
 * @param file   as given
 * @throws TableError  with what it is, where it is no table that can be read
 * @example readTable(new TextEncoder().encode('task,seconds\nwire,45\n'), 'times.csv').rows.length // => 2
 */
export function readTable(bytes: Uint8Array, file: string, choice: TableChoice = {}): RawTable {
  needSize(bytes.length, file)
  if (starts(bytes, [0x50, 0x4b, 3, 4])) return workbookTable(bytes, file, choice.sheet)
  if (choice.sheet !== undefined) throw refusal(file, '', 'only a workbook has sheets', 'leave the sheet out')
  const other = OTHERS.find(({ first }) => starts(bytes, first))
  if (other !== undefined) throw refusal(file, '', `it is ${other.is}`, 'save the table as .xlsx or CSV')
  const { text, notes } = decoded(bytes)
  const binary = [...text.slice(0, LOOKED_AT)].findIndex((sign) => isControl(sign.charCodeAt(0)))
  if (binary >= 0)
    throw refusal(file, `line ${text.slice(0, binary).split('\n').length}`, 'it is no text', 'save the table as .xlsx or CSV')
  return textTable(text, file, notes)
}

/**
 * Whether a file of this size is read at all.
 *
 * @param bytes  size of the file
 * @throws TableError
 */
function needSize(bytes: number, file: string): void {
  if (bytes <= TABLE_BYTES_MAX) return
  const size = Math.round(bytes / 2 ** 20)
  throw refusal(
    file,
    '',
    `it has ${size} MB; tables of up to ${TABLE_BYTES_MAX / 2 ** 20} MB are read`,
    'keep only the rows and sheets of the study',
  )
}

/** signs that decide whether it is text */
const LOOKED_AT = 100_000

/** No text has these: all below a blank but for tab and line ends. */
const isControl = (code: number): boolean => code < 32 && code !== 9 && code !== 10 && code !== 12 && code !== 13

const OTHERS = [
  { first: [0xd0, 0xcf, 0x11, 0xe0], is: 'an old workbook (.xls), or one that is locked by a password' },
  { first: [0x25, 0x50, 0x44, 0x46], is: 'a PDF file' },
  { first: [0x89, 0x50, 0x4e, 0x47], is: 'a picture' },
  { first: [0xff, 0xd8, 0xff], is: 'a picture' },
  { first: [0x1f, 0x8b], is: 'a compressed file' },
] as const

const starts = (bytes: Uint8Array, first: readonly number[]): boolean => first.every((byte, at) => bytes[at] === byte)

/** UTF-8, UTF-16 by its mark, else the letters of western Windows. */
function decoded(bytes: Uint8Array): { text: string; notes: string[] } {
  for (const [mark, name] of [
    [[0xff, 0xfe], 'utf-16le'],
    [[0xfe, 0xff], 'utf-16be'],
  ] as const)
    if (starts(bytes, mark)) return { text: new TextDecoder(name).decode(bytes), notes: ['read as UTF-16'] }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), notes: [] }
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), notes: ['not UTF-8: read with the letters of western Windows'] }
  }
}
