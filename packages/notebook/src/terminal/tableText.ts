/** A table as text: as many of its columns as the terminal is wide. */
import { styledText, type Table, visibleLine } from '@loopwright/charts/table'
import { barText } from './barText.ts'
import { TERMINAL_COLUMNS, type TerminalOptions } from './terminalOptions.ts'
import { wrap } from './wrap.ts'

/** more columns are a page's business, unless the terminal is wider than most */
const COLUMNS_MAX = 8
/** a column of words is not made narrower than this */
const WORDS_MIN = 20
/** characters of a bar */
const BAR = 10

interface Column {
  readonly heads: readonly string[]
  /** one or more lines for each row */
  readonly cells: readonly (readonly string[])[]
  readonly right: boolean
  readonly pageOnly: boolean
  readonly name: string
  /** characters of the widest line */
  readonly wide: number
  /** in the table */
  readonly place: number
}

/**
 * A table in columns two blanks apart; numbers to the right; the marked row begins with `>`. Where not all columns have room those for the page go first;
 * then words are broken into lines; then the last columns go. A note follows, wrapped, and a line that names
 * what is left out. Bars stand where the terminal is wide enough for them as well.
 */
export function tableText(table: Table, { colour = false, columns: width = TERMINAL_COLUMNS, bars = false }: TerminalOptions = {}): string {
  const all = columnsOf(table)
  const kept = fitting(all, width)
  const drawn = bars && kept.length === all.length ? withBars(table, kept, width) : kept
  const headLines = Math.max(1, ...drawn.map(({ heads }) => heads.length))
  const padded = drawn.map((column) => ({
    ...column,
    heads: [...Array<string>(headLines - column.heads.length).fill(''), ...column.heads],
  }))
  const rowText = (texts: readonly string[]): string =>
    padded
      .map((column, place) => {
        const blanks = ' '.repeat(Math.max(0, column.wide - length(texts[place]!)))
        return column.right ? blanks + texts[place]! : texts[place]! + blanks
      })
      .join('  ')
      .trimEnd()
  const lines = Array.from({ length: headLines }, (_, line) => `  ${rowText(padded.map(({ heads }) => heads[line]!))}`)
  for (const [index, { marked, tone }] of table.rows.entries()) {
    const height = Math.max(...padded.map(({ cells }) => cells[index]!.length))
    for (let line = 0; line < height; line += 1) {
      const text = `${marked && line === 0 ? '>' : ' '} ${rowText(padded.map(({ cells }) => cells[index]![line] ?? ''))}`
      lines.push(styledText(text, tone ?? 'strong', colour && (marked || tone !== undefined)))
    }
  }
  // columns for the page are no loss: the page has them
  const left = all.filter(({ place, pageOnly }) => !pageOnly && !kept.some((column) => column.place === place))
  if (table.note !== null) lines.push(wrap(visibleLine(table.note), width))
  if (left.length > 0) lines.push(wrap(`Left out here for want of room: ${left.map(({ name }) => name).join('; ')}.`, width))
  return lines.join('\n')
}

function columnsOf(table: Table): Column[] {
  return table.columns.map(({ head, align, pageOnly }, index) =>
    sized({
      heads: head.split('\n').map(visibleLine),
      cells: table.rows.map(({ cells }) => [visibleLine(cells[index] ?? '')]),
      right: align === 'right',
      pageOnly,
      name: visibleLine(head),
      place: index,
    }),
  )
}

/** Columns that have room, in their order; the first one always stays. Of those for the page a usual terminal shows all or none, a wider one what it can. */
function fitting(all: readonly Column[], width: number): Column[] {
  const roomy = width > TERMINAL_COLUMNS
  const tooMany = (some: readonly Column[]): boolean => widthOfAll(some) > width || (!roomy && some.length > COLUMNS_MAX)
  let kept = [...all]
  if (!roomy && tooMany(kept)) kept = kept.filter(({ pageOnly }) => !pageOnly)
  while (tooMany(kept) && kept.some(({ pageOnly }) => pageOnly))
    kept.splice(
      kept.findLastIndex(({ pageOnly }) => pageOnly),
      1,
    )
  kept = narrowed(kept, width)
  while (tooMany(kept) && kept.length > 1) kept.pop()
  return kept
}
/** The widest columns of words broken into lines, as far as that is needed. */
function narrowed(kept: readonly Column[], width: number): Column[] {
  const columns = [...kept]
  const byWidth = columns.flatMap(({ right }, place) => (right ? [] : [place])).sort((a, b) => columns[b]!.wide - columns[a]!.wide)
  for (const place of byWidth) {
    const over = widthOfAll(columns) - width
    if (over <= 0) break
    const column = columns[place]!
    const limit = Math.max(WORDS_MIN, column.wide - over)
    columns[place] = sized({ ...column, cells: column.cells.map((lines) => wrap(lines.join(' '), limit).split('\n')) })
  }
  return columns
}

/** Behind each column that has bars, one of bars; as they are where there is no room. */
function withBars(table: Table, kept: readonly Column[], width: number): readonly Column[] {
  const drawn = kept.flatMap((column): Column[] => {
    const { place } = column
    const bars = table.columns[place]!.bar === true ? table.rows.map(({ bars: values }) => values?.[place] ?? null) : []
    if (bars.every((value) => value === null)) return [column]
    const largest = Math.max(...bars.map((value) => Math.abs(value ?? 0)))
    return [
      column,
      sized({ heads: [], cells: bars.map((value) => [barText(value, largest, BAR)]), right: false, pageOnly: false, name: '', place }),
    ]
  })
  return widthOfAll(drawn) <= width ? drawn : kept
}

const length = (text: string): number => [...text].length
const sized = (column: Omit<Column, 'wide'>): Column => ({
  ...column,
  wide: [...column.heads, ...column.cells.flat()].reduce((most, text) => Math.max(most, length(text)), 0),
})
/** two blanks, or a mark, before the first */
const widthOfAll = (columns: readonly Column[]): number => columns.reduce((sum, column) => sum + 2 + column.wide, 0)
