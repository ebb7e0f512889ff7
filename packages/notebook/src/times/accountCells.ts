/** What became of the rows of a table, as cells: every tale of a table tells it. */
import { tableOf, wordColumn } from '@loopwright/charts/table'
import { type Account, accountWords, type Refusal } from '@loopwright/measure'
import { type CautionCell, type ProseCell, proseCell, type TableCell, tableCell, warningCell } from '../cells/cell.ts'
import { counted } from '../words/countedWords.ts'

/** A table of a file, as far as its rows go. */
export interface ReadFile {
  readonly file: string
  readonly account: Account
  readonly said: readonly string[]
  readonly doubts: readonly string[]
}

/** reasons that a warning names; the table holds all */
const NAMED = 5

/** What was read: rows read + rows refused = rows in the file; always shown. */
export function readCell(id: string, files: readonly ReadFile[]): ProseCell {
  return proseCell(
    `${id}-read`,
    ...files.map(({ file, account, said }) => `${file}: ${accountWords(account)} ${said.map(sentence).join(' ')}`),
  )
}

const sentence = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`

/** A row in which nothing stands; of one that only lacks a value the column is named. */
const isBlankRow = ({ place, reason }: Refusal): boolean => reason === 'it is empty' && /^(line|row) \d+$/.test(place)

/** Rows that were refused, by reason, and what was guessed; none where all is well. */
export function readWarnings(id: string, files: readonly ReadFile[]): CautionCell[] {
  const refusals = files.flatMap(({ file, account }) => account.refusals.filter((one) => !isBlankRow(one)).map((one) => ({ file, ...one })))
  const reasons = new Map<string, typeof refusals>()
  for (const one of refusals) reasons.set(one.reason, [...(reasons.get(one.reason) ?? []), one])
  const lines = [...reasons].slice(0, NAMED).map(([reason, all]) => {
    const more = all.length === 1 ? '' : ` (and ${counted(all.length - 1, 'more', 'more')})`
    return `- ${files.length > 1 ? `${all[0]!.file}, ` : ''}${all[0]!.place}${more}: ${reason}.`
  })
  const left = reasons.size > NAMED ? [`- ${counted(reasons.size - NAMED, 'further reason')}, in the table of refused rows.`] : []
  const doubts = [...new Set(files.flatMap((one) => one.doubts))]
  return [
    ...(lines.length === 0 ? [] : [warningCell(`${id}-refused`, 'Rows and cells that were not read', [...lines, ...left].join('\n'))]),
    ...(doubts.length === 0
      ? []
      : [warningCell(`${id}-doubts`, 'Look at this before anything else', doubts.map((text) => `- ${text}`).join('\n'))]),
  ]
}

/** Every refused row and cell; empty where there is none. */
export function refusedCells(id: string, files: readonly ReadFile[]): TableCell[] {
  const rows = files.flatMap(({ file, account }) => account.refusals.map((one) => ({ file, ...one })))
  if (rows.length === 0) return []
  const table = tableOf<Refusal & { file: string }>({
    caption: 'Rows and cells that were not read',
    columns: [
      wordColumn('File', 'file', 'table', ({ file }) => file),
      wordColumn('Where', 'place', 'line, or cell of the sheet', ({ place }) => place),
      wordColumn('Why', 'reason', 'why it was not read', ({ reason }) => reason),
      wordColumn('What', 'what', 'row: nothing of the row was read; cell: the rest of it was', ({ wholeRow }) =>
        wholeRow ? 'row' : 'cell',
      ),
    ],
    rows,
  })
  return [{ ...tableCell(`${id}-refused`, table), pageOnly: true }]
}
