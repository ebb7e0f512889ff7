/** A table of an Excel workbook (.xlsx: ECMA-376, Office Open XML): cells with their kind, merged cells filled downwards, dates of both epochs. Nothing in it is run. */
import { unzipSync } from 'fflate'
import { SaxesParser } from 'saxes'
import { type NumberFormat, numberFormat } from './numberFormat.ts'
import { type Cell, EMPTY, type RawRow, type RawTable, textCell } from './rawTable.ts'
import { refusal } from './tableError.ts'

/** Of one part of the workbook, unpacked; bytes. */
const PART_MAX = 40 * 2 ** 20
const ROWS_MAX = 200_000
const COLUMNS_MAX = 1000

/**
 * The table of one sheet.
 *
 * @param bytes  of the file
 * @param sheet  by its name; default: the first visible one that is not empty
 * @throws TableError
 */
export function workbookTable(bytes: Uint8Array, file: string, sheet?: string): RawTable {
  const part = partsOf(bytes, file)
  const book = bookOf(part, file)
  const names = book.sheets.map(({ name }) => `"${name}"`).join(', ')
  const wanted = sheet === undefined ? book.sheets.filter(({ hidden }) => !hidden) : book.sheets.filter(({ name }) => name === sheet)
  if (wanted.length === 0)
    throw refusal(file, '', sheet === undefined ? 'it has no visible sheet' : `there is no sheet "${sheet}"`, `there are ${names}`)
  const texts = part('xl/sharedStrings.xml', (xml) => sharedTexts(xml).map(textCell)) ?? []
  const formats = part('xl/styles.xml', (xml) => formatsOf(xml)) ?? []
  for (const { name, path } of wanted) {
    const found = part(path, (xml) => sheetOf(xml, { texts, formats, days: book.days, file }))
    if (found === null) throw refusal(file, '', `the sheet "${name}" is missing in it`, 'save the workbook again')
    if (found.rows.length === 0 && sheet === undefined) continue
    const others = book.sheets.filter((one) => one.name !== name).map((one) => `"${one.name}"`)
    const notes = [
      `sheet "${name}"`,
      ...(others.length === 0 ? [] : [`not read: the sheet${others.length === 1 ? '' : 's'} ${others.join(', ')}`]),
      ...(book.days === 0 ? [] : ['dates count from 1904']),
      ...found.notes,
    ]
    return { file, spreadsheet: true, separator: null, rows: found.rows, notes }
  }
  throw refusal(file, '', 'all its sheets are empty', `there are ${names}`)
}

type Part = <T>(path: string, read: (xml: string) => T) => T | null

/** Parts of the package, unpacked when they are asked for. */
function partsOf(bytes: Uint8Array, file: string): Part {
  return (path, read) => {
    let tooLarge = false
    let found: Record<string, Uint8Array>
    try {
      found = unzipSync(bytes, {
        filter: ({ name, originalSize }) => {
          if (name !== path) return false
          tooLarge ||= originalSize > PART_MAX
          return originalSize <= PART_MAX
        },
      })
    } catch {
      throw refusal(file, '', 'it is damaged: it cannot be unpacked', 'save the workbook again')
    }
    if (tooLarge) throw refusal(file, '', `"${path}" in it is larger than ${PART_MAX / 2 ** 20} MB`, 'keep only the rows of the study')
    const data = found[path]
    if (data === undefined) return null
    try {
      return read(new TextDecoder('utf-8').decode(data))
    } catch (error) {
      if (error instanceof Error && error.name === 'TableError') throw error
      throw refusal(file, '', `"${path}" in it is damaged`, 'save the workbook again')
    }
  }
}

interface Handlers {
  readonly open?: (name: string, of: Readonly<Record<string, string>>) => void
  readonly text?: (text: string) => void
  readonly close?: (name: string) => void
}

/** Tells the handlers what stands in XML, in its order; names without their prefix. Entities other than those of XML itself are refused by the parser. */
function readXml(xml: string, { open, text, close }: Handlers): void {
  const parser = new SaxesParser()
  const plain = (name: string): string => name.slice(name.indexOf(':') + 1)
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', ({ name, attributes }) => open?.(plain(name), attributes))
  parser.on('text', (more) => text?.(more))
  parser.on('cdata', (more) => text?.(more))
  parser.on('closetag', ({ name }) => close?.(plain(name)))
  parser.write(xml).close()
}

interface Book {
  readonly sheets: readonly { readonly name: string; readonly path: string; readonly hidden: boolean }[]
  /** added to dates: 1462 where they count from 1904 */
  readonly days: number
}

function bookOf(part: Part, file: string): Book {
  const targets = new Map<string, string>()
  part('xl/_rels/workbook.xml.rels', (xml) =>
    readXml(xml, {
      open: (name, of) => {
        if (name !== 'Relationship') return
        const target = of.Target ?? ''
        targets.set(of.Id ?? '', target.startsWith('/') ? target.slice(1) : `xl/${target}`)
      },
    }),
  )
  const sheets: { name: string; path: string; hidden: boolean }[] = []
  let days = 0
  const found = part('xl/workbook.xml', (xml) => {
    readXml(xml, {
      open: (name, of) => {
        if (name === 'workbookPr' && /^(1|true)$/.test(of.date1904 ?? '')) days = 1462
        if (name !== 'sheet') return
        const id = Object.entries(of).find(([key]) => /(^|:)id$/.test(key))?.[1] ?? ''
        sheets.push({ name: of.name ?? '', path: targets.get(id) ?? '', hidden: (of.state ?? 'visible') !== 'visible' })
      },
    })
    return true
  })
  if (found === null) throw refusal(file, '', 'it is a packed file, but no workbook', 'save the table as .xlsx or CSV')
  return { sheets, days }
}

/** Shared texts, in order; phonetic hints are no part of them. */
function sharedTexts(xml: string): string[] {
  const texts: string[] = []
  let now = ''
  let inText = false
  let phonetic = false
  readXml(xml, {
    open: (name) => {
      if (name === 'si') now = ''
      if (name === 'rPh') phonetic = true
      if (name === 't') inText = !phonetic
    },
    text: (text) => {
      if (inText) now += text
    },
    close: (name) => {
      if (name === 't') inText = false
      if (name === 'rPh') phonetic = false
      if (name === 'si') texts.push(now)
    },
  })
  return texts
}

/** Number format of each cell style. */
function formatsOf(xml: string): NumberFormat[] {
  const own = new Map<number, string>()
  const formats: NumberFormat[] = []
  let inCells = false
  readXml(xml, {
    open: (name, of) => {
      if (name === 'numFmt') own.set(Number(of.numFmtId), of.formatCode ?? '')
      if (name === 'cellXfs') inCells = true
      if (name === 'xf' && inCells) formats.push(numberFormat(Number(of.numFmtId ?? 0), own))
    },
    close: (name) => {
      if (name === 'cellXfs') inCells = false
    },
  })
  return formats
}

interface SheetContext {
  /** cells of the shared texts */
  readonly texts: readonly Cell[]
  readonly formats: readonly NumberFormat[]
  readonly days: number
  readonly file: string
}

function sheetOf(xml: string, context: SheetContext): { rows: RawRow[]; notes: string[] } {
  const rows = new Map<number, Cell[]>()
  const merges: string[] = []
  let hidden = 0
  let formulas = 0
  let line = 0
  let column = -1
  let [type, style, value, formula, inValue] = ['', 0, '', false, false]
  let row: Cell[] = []
  readXml(xml, {
    open: (name, of) => {
      if (name === 'row') {
        line = of.r === undefined ? line + 1 : Number(of.r)
        column = -1
        row = rows.get(line) ?? []
        if (/^(1|true)$/.test(of.hidden ?? '')) hidden++
        if (!Number.isInteger(line) || line < 1)
          throw refusal(context.file, '', `a row of it has the number "${of.r!.slice(0, 40)}"`, 'save the workbook again')
        if (line > ROWS_MAX)
          throw refusal(context.file, `row ${line}`, `rows up to ${ROWS_MAX} are read`, 'keep only the rows of the study')
      } else if (name === 'c') {
        column = of.r === undefined ? column + 1 : columnIndex(of.r)
        type = of.t ?? 'n'
        style = Number(of.s ?? 0)
        value = ''
        formula = false
      } else if (name === 'f') formula = true
      else if (name === 'v' || name === 't') inValue = true
      else if (name === 'mergeCell') merges.push(of.ref ?? '')
    },
    text: (text) => {
      if (inValue) value += text
    },
    close: (name) => {
      if (name === 'v' || name === 't') inValue = false
      if (name !== 'c' || column >= COLUMNS_MAX) return
      const cell = cellOf(type, value, context.formats[style], context)
      if (cell.kind === 'empty') return
      if (row.length === 0) rows.set(line, row)
      row[column] = formula ? { ...cell, formula: true } : cell
      if (formula) formulas++
    },
  })
  const filled = fillMerges(rows, merges)
  const last = [...rows.keys()].reduce((most, row) => Math.max(most, row), 0)
  return {
    rows: Array.from({ length: last }, (_, index) => ({
      line: index + 1,
      lines: 1,
      cells: Array.from(rows.get(index + 1) ?? [], (cell) => cell ?? EMPTY),
    })),
    notes: [
      ...(formulas === 0 ? [] : [`${formulas} cells are formulas: their values as last saved are read, nothing is computed`]),
      ...(hidden === 0 ? [] : [`${hidden} rows are hidden in it, and read like the others`]),
      ...(filled === 0 ? [] : [`${filled} cells get what stands in the cell above that they are merged with`]),
    ],
  }
}

function cellOf(type: string, value: string, format: NumberFormat | undefined, { texts, days }: SheetContext): Cell {
  if (type === 's') return texts[Number(value)] ?? EMPTY
  if (type === 'str' || type === 'inlineStr') return textCell(value)
  if (type === 'b') return { kind: 'truth', text: value === '1' ? 'TRUE' : 'FALSE', value: null }
  if (type === 'e') return { kind: 'error', text: value, value: null }
  if (type === 'd') return textCell(value.replace('T', ' ').replace(/Z$/, ''))
  if (value === '') return EMPTY
  const number = value.length < 16 ? Number(value) : Number(Number(value).toPrecision(15))
  if (!Number.isFinite(number)) return { kind: 'error', text: value, value: null }
  const is = format?.is ?? 'number'
  if (is === 'number') return { kind: 'number', text: String(number), value: number }
  const ofDay = Math.round(number * 86_400_000) / 1000
  // a clock time alone lies below one day; more than that is a length of time, or a day with its time
  if (is === 'elapsed' || (is === 'clock' && number < 1))
    return { kind: 'time', text: clockText(ofDay), value: ofDay, ...(format!.seconds ? {} : { hoursAndMinutes: true }) }
  const seconds = Math.round((number + days - 25_569) * 86_400_000) / 1000
  return { kind: 'date', text: new Date(seconds * 1000).toISOString().slice(0, 19).replace('T', ' '), value: seconds }
}

function clockText(seconds: number): string {
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60]
  const rest = Number((seconds - 3600 * hours - 60 * minutes).toFixed(3))
  return `${hours}:${String(minutes).padStart(2, '0')}:${rest < 10 ? '0' : ''}${rest}`
}

/** `AB12` → 27 */
function columnIndex(reference: string): number {
  let index = 0
  for (const sign of /^[A-Z]+/.exec(reference)?.[0] ?? '') index = 26 * index + sign.charCodeAt(0) - 64
  return index - 1
}

/** Texts of cells merged downwards stand for all their rows; numbers and times are never repeated. */
function fillMerges(rows: Map<number, Cell[]>, merges: readonly string[]): number {
  let filled = 0
  for (const merge of merges.slice(0, 10_000)) {
    const [from, to] = merge.split(':')
    if (from === undefined || to === undefined) continue
    const column = columnIndex(from)
    const [first, last] = [from, to].map((one) => Number(/\d+$/.exec(one)?.[0] ?? 0)) as [number, number]
    const cell = rows.get(first)?.[column]
    if (cell?.kind !== 'text') continue
    for (let line = first + 1; line <= Math.min(last, ROWS_MAX); line++) {
      const row = rows.get(line)
      if (row === undefined || (row[column] ?? EMPTY).kind !== 'empty') continue
      row[column] = { ...cell, merged: true }
      filled++
    }
  }
  return filled
}
