/** Workbooks made by hand for tests: the parts of ECMA-376 that a small table needs, packed. */
import { strToU8, zipSync } from 'fflate'

/** A cell as its XML: text as a shared text would be, or the whole element's inside with its type and style. */
export type WorkbookCell = string | number | null | { readonly type?: string; readonly style?: number; readonly inside: string }

export interface WorkbookParts {
  readonly rows: readonly (readonly WorkbookCell[])[]
  /** such as A2:A4 */
  readonly merges?: readonly string[]
  readonly date1904?: boolean
  /** codes of the styles 1, 2, … */
  readonly formats?: readonly string[]
  /** further sheets, each with its rows; the first is called Times */
  readonly more?: Readonly<Record<string, readonly (readonly WorkbookCell[])[]>>
  /** numbers of rows, from 1, that are hidden */
  readonly hidden?: readonly number[]
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

function letters(index: number): string {
  return `${index >= 26 ? letters(Math.floor(index / 26) - 1) : ''}${String.fromCharCode(65 + (index % 26))}`
}

function sheetXml(rows: WorkbookParts['rows'], merges: readonly string[] = [], hidden: readonly number[] = []): string {
  const body = rows.map((cells, row) => {
    const xml = cells.map((cell, column) => {
      const at = `${letters(column)}${row + 1}`
      if (cell === null) return ''
      if (typeof cell === 'number') return `<c r="${at}"><v>${cell}</v></c>`
      if (typeof cell === 'string') return `<c r="${at}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`
      return `<c r="${at}"${cell.type === undefined ? '' : ` t="${cell.type}"`}${cell.style === undefined ? '' : ` s="${cell.style}"`}>${cell.inside}</c>`
    })
    return `<row r="${row + 1}"${hidden.includes(row + 1) ? ' hidden="1"' : ''}>${xml.join('')}</row>`
  })
  const merged = merges.length === 0 ? '' : `<mergeCells>${merges.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`
  return `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${body.join('')}</sheetData>${merged}</worksheet>`
}

/** The bytes of a workbook. */
export function workbookBytes({ rows, merges, date1904 = false, formats = [], more = {}, hidden }: WorkbookParts): Uint8Array {
  const sheets = [['Times', sheetXml(rows, merges, hidden)], ...Object.entries(more).map(([name, each]) => [name, sheetXml(each)])]
  const relations = sheets.map((_, at) => `<Relationship Id="rId${at + 1}" Type="x" Target="worksheets/sheet${at + 1}.xml"/>`)
  const styles = [0, ...formats.map((_, at) => 200 + at)].map((id) => `<xf numFmtId="${id}"/>`)
  const files: Record<string, string> = {
    'xl/workbook.xml': `<workbook xmlns:r="r"><workbookPr${date1904 ? ' date1904="1"' : ''}/><sheets>${sheets
      .map(([name], at) => `<sheet name="${name}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`)
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships>${relations.join('')}</Relationships>`,
    'xl/styles.xml': `<styleSheet><numFmts>${formats
      .map((code, at) => `<numFmt numFmtId="${200 + at}" formatCode="${escaped(code).replaceAll('"', '&quot;')}"/>`)
      .join('')}</numFmts><cellXfs>${styles.join('')}</cellXfs></styleSheet>`,
  }
  sheets.forEach(([, xml], at) => {
    files[`xl/worksheets/sheet${at + 1}.xml`] = xml!
  })
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, xml]) => [name, strToU8(xml)])))
}
