/** Which column is which: heads in one row or two, units in them, named by the user or known by usual words. */
import { listWords } from '@loopwright/line'
import { type TimeUnit, timeUnit } from '../values/duration.ts'
import { isBlank, placeOf, type RawTable } from './rawTable.ts'
import { refusal, type TableFault, TableError } from './tableError.ts'

/** A column's head. */
export interface Head {
  /** as written; of two rows with a blank between */
  readonly text: string
  /** the text without its unit, small letters and digits alone */
  readonly plain: string
  readonly unit: TimeUnit | null
}

/** What a column may be for, with the words that usually head it. */
export type Roles = Readonly<Record<string, readonly string[]>>

/** The heads of a table, and what its columns are for. */
export interface Columns {
  readonly heads: readonly Head[]
  /** index of the column, by role */
  readonly at: ReadonlyMap<string, number>
  /** index in `rows` of the first row below the heads */
  readonly bodyFrom: number
  /** rows that the heads take */
  readonly headRows: number
  /** such as `time: "Seconds"`, in the order of roles */
  readonly said: readonly string[]
}

/** rows in which heads are looked for */
const LOOKED_AT = 15

/**
 * The columns of a table.
 *
 * @param roles   words are compared without blanks, signs and capitals
 * @param named   head of a column by role, as the user said; goes before the words
 * @param enough  whether the columns found are a table of this kind
 * @param needs   what is missing where none is: a sentence
 * @throws TableError  where no row can be the heads, a named column is not there, or two columns could be the same
 * @example headOf('Time (min)').unit // => 'min'
 */
export function findColumns(
  table: RawTable,
  roles: Roles,
  named: Readonly<Record<string, string>>,
  enough: (at: ReadonlyMap<string, number>, heads: readonly Head[]) => boolean,
  needs: string,
): Columns {
  let best: (Columns & { score: number; faults: TableFault[] }) | null = null
  const { rows, file } = table
  const wide = rows.slice(0, LOOKED_AT).find(({ cells }) => cells.length > COLUMNS_MAX)
  if (wide !== undefined)
    throw refusal(
      file,
      `line ${wide.line}`,
      `it has ${wide.cells.length} cells, and no table is wider than ${COLUMNS_MAX}`,
      'save the table again, a line for each row',
    )
  for (const [index, row] of rows.slice(0, LOOKED_AT).entries()) {
    if (isBlank(row) || row.cells.some(({ kind }) => kind === 'number' || kind === 'time' || kind === 'date')) {
      // numbers may head the cycles of a wide table
      if (!row.cells.some(({ kind }) => kind === 'text')) continue
    }
    const below = rows[index + 1]
    for (const headRows of below !== undefined && maybeHeads(below.cells.map(({ text }) => text)) ? [1, 2] : [1]) {
      const width = Math.max(row.cells.length, headRows === 2 ? below!.cells.length : 0)
      const heads = Array.from({ length: width }, (_, column) => {
        const texts = [row.cells[column]?.text ?? '', headRows === 2 ? (below!.cells[column]?.text ?? '') : '']
        return headOf(texts.filter((text) => text !== '').join(' '))
      })
      const { at, faults } = assigned(table, heads, roles, named, row.line)
      // a row of units belongs to the heads
      const score = at.size + (headRows - 1) / 2
      if (!enough(at, heads)) continue
      if (best !== null && best.score >= score) continue
      const said = Object.keys(roles).flatMap((role) => (at.has(role) ? [`${role}: "${heads[at.get(role)!]!.text}"`] : []))
      best = { heads, at, bodyFrom: index + headRows, headRows, said, score, faults }
    }
  }
  if (best === null) throw noHeads(table, named, needs)
  const missing = Object.entries(named).filter(([, head]) => !best!.heads.some((each) => same(each, head)))
  const faults = [...best.faults, ...missing.map(([role, head]) => unknownHead(file, role, head, best!.heads))]
  if (faults.length > 0) throw new TableError(faults)
  return best
}

/** A row under the heads that holds units or a second part of the names. */
const maybeHeads = (texts: readonly string[]): boolean =>
  texts.some((text) => text !== '') &&
  texts.every((text) => text === '' || (!/\d/.test(text) && text.length <= 20)) &&
  texts.some((text) => timeUnit(text.replaceAll(/[()[\]]/g, '')) !== null)

/** cells of a row that may be the heads; far more than a clipboard holds */
const COLUMNS_MAX = 2000
/** heads that a fault names */
const NAMED_MAX = 12

/** characters; a longer text is no head, and holds no unit that anybody looks for */
const HEAD_MAX = 200

/**
 * The head of a column from its text.
 *
 * @example headOf('Duration [s]') // => { text: 'Duration [s]', plain: 'duration', unit: 's' }
 */
export function headOf(text: string): Head {
  const clean = text.trim()
  if (clean.length > HEAD_MAX) return { text: clean, plain: plainWord(clean), unit: null }
  const inBrackets = /[([{]\s*([^)\]}]+?)\s*[)\]}]/.exec(clean)
  let unit = inBrackets === null ? null : timeUnit(inBrackets[1]!.replace(/^in /i, ''))
  let rest = unit === null ? clean : clean.replace(inBrackets![0], ' ')
  if (unit === null) {
    const last = /^(.*?)(?:[\s_,/-]+(?:in[\s_]+)?)([A-Za-z]+\.?)$/.exec(clean)
    const word = last === null ? null : timeUnit(last[2]!)
    if (word !== null && last![1]!.trim() !== '') [unit, rest] = [word, last![1]!]
  }
  const plain = plainWord(rest)
  // a head that is a unit itself: "seconds"
  if (unit === null) unit = timeUnit(clean)
  return { text: clean, plain: plain === '' ? plainWord(clean) : plain, unit }
}

export const plainWord = (text: string): string => text.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, '')

const same = (head: Head, text: string): boolean =>
  head.text.toLowerCase() === text.trim().toLowerCase() || (plainWord(text) !== '' && head.plain === headOf(text).plain)

function assigned(
  table: RawTable,
  heads: readonly Head[],
  roles: Roles,
  named: Readonly<Record<string, string>>,
  line: number,
): { at: Map<string, number>; faults: TableFault[] } {
  const at = new Map<string, number>()
  const faults: TableFault[] = []
  const taken = new Set<number>()
  const given = (role: string): number[] => heads.flatMap((head, index) => (same(head, named[role]!) ? [index] : []))
  for (const role of Object.keys(roles).filter((each) => named[each] !== undefined)) {
    const found = given(role)
    if (found.length > 1) faults.push(twice(table, heads, role, found, line))
    if (found[0] !== undefined) {
      at.set(role, found[0])
      taken.add(found[0])
    }
  }
  for (const [role, words] of Object.entries(roles)) {
    if (named[role] !== undefined) continue
    for (const word of words) {
      const found = heads.flatMap((head, index) => (head.plain === word && !taken.has(index) ? [index] : []))
      if (found.length > 1) faults.push(twice(table, heads, role, found, line))
      if (found[0] === undefined) continue
      at.set(role, found[0])
      taken.add(found[0])
      break
    }
  }
  return { at, faults }
}

function twice(table: RawTable, heads: readonly Head[], role: string, found: readonly number[], line: number): TableFault {
  const places = found.map((column) => placeOf(table, line, column, heads[column]!.text))
  return {
    file: table.file,
    place: places[0]!,
    what: `${found.length} columns could be the ${role}: ${places.join(', ')}`,
    fix: 'give each column a head of its own',
  }
}

function unknownHead(file: string, role: string, head: string, heads: readonly Head[]): TableFault {
  return { file, place: '', what: `there is no column "${head}" for the ${role}`, fix: `there are ${listed(heads)}` }
}

const listed = (heads: readonly Head[]): string => {
  const texts = heads.filter(({ text }) => text !== '').map(({ text }) => `"${text}"`)
  return texts.length === 0 ? 'none' : listWords(texts, NAMED_MAX)
}

function noHeads(table: RawTable, named: Readonly<Record<string, string>>, needs: string): TableError {
  const first =
    table.rows.slice(0, LOOKED_AT).find((row) => row.cells.filter(({ kind }) => kind === 'text').length > 1) ??
    table.rows.find((row) => !isBlank(row))
  const heads = (first?.cells ?? []).map(({ text }) => headOf(text))
  const missing = Object.entries(named).filter(([, head]) => !heads.some((each) => same(each, head)))
  if (missing.length > 0) return new TableError(missing.map(([role, head]) => unknownHead(table.file, role, head, heads)))
  return new TableError([
    {
      file: table.file,
      place: first === undefined ? '' : placeOf(table, first.line, null),
      what: `no row names the columns: ${needs}; found ${listed(heads)}`,
      fix: 'write heads above them, or name the columns (--columns "time=Seconds")',
    },
  ])
}
