/** The story of a scenario put together of data: what went where, what stays a guess, and what changed since the last time. */
import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { Difference } from '@loopwright/scenario'
import {
  type AnswerCell,
  type CautionCell,
  type Cell,
  proseCell,
  type ProseCell,
  type TableCell,
  tableCell,
  warningCell,
} from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { type ReadFile, readCell, readWarnings, refusedCells } from '../times/accountCells.ts'
import { counted } from '../words/countedWords.ts'

/** What was put together. */
export interface AssembledData {
  readonly skeleton: string
  /** '': nothing is written */
  readonly written: string
  readonly files: readonly ReadFile[]
  /** of the folder, that no reader takes */
  readonly unused: readonly string[]
  readonly changes: readonly { readonly path: string; readonly value: string; readonly from: string }[]
  readonly notes: readonly string[]
  /** since the file was written last; null: it was not there */
  readonly differences: readonly Difference[] | null
}

/** The tale of a scenario put together, and its parts by name. */
export interface AssembleStory extends Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  readonly changes: TableCell | null
  readonly differences: TableCell | null
  readonly read: ProseCell
  readonly refused: readonly TableCell[]
}

/**
 * The story's parts, by name.
 *
 * @param compared  cells of the comparison with what was written last. Default: none
 * @example assembleStory({ skeleton: 'line.yaml', written: '', files: [], unused: [], changes: [], notes: [], differences: null }).question // => 'What do the data make of the line?'
 */
export function assembleStory(data: AssembledData, compared: readonly Cell[] = []): AssembleStory {
  const { changes, differences, files } = data
  const parts = {
    answer: { kind: 'answer', id: 'assemble-answer', sentences: answerSentences(data) } satisfies AnswerCell,
    warnings: folderWarnings('assemble', data),
    changes: changes.length === 0 ? null : tableCell('assemble-changes', changeTable(changes)),
    differences: differences === null || differences.length === 0 ? null : tableCell('assemble-differences', differenceTable(differences)),
    read: readCell('assemble', files),
    refused: refusedCells('assemble', files),
  }
  const cells: Cell[] = [
    parts.answer,
    ...parts.warnings,
    ...(parts.differences === null ? [] : [parts.differences]),
    ...compared,
    ...(parts.changes === null ? [] : [parts.changes]),
    proseCell('section-read', '## What was read'),
    parts.read,
    ...parts.refused,
    ...(compared.some(({ id }) => id === USE.id) ? [] : [USE]),
  ]
  return { ...parts, question: 'What do the data make of the line?', cells }
}

/**
 * What of a folder of data was not read, is guessed, or counts twice.
 *
 * @example folderWarnings('data', { files: [], notes: ['No times were measured.'], unused: [] })[0].title // => 'What is still a guess, or counts twice'
 */
export function folderWarnings(id: string, { files, notes, unused }: Pick<AssembledData, 'files' | 'notes' | 'unused'>): CautionCell[] {
  const told = [...notes, ...unused.map((file) => `"${file}" is not used: its name begins with none of times, stops, orders.`)]
  const open = warningCell(`${id}-notes`, 'What is still a guess, or counts twice', told.map((one) => `- ${one}`).join('\n'))
  return [...readWarnings(id, files), ...(told.length === 0 ? [] : [open])]
}

/**
 * What became of the rows of a folder's tables; always shown.
 *
 * @example folderCells('data', [])[0].id // => 'data-section-read'
 */
export const folderCells = (id: string, files: readonly ReadFile[]): Cell[] => [
  proseCell(`${id}-section-read`, '## What was read'),
  readCell(id, files),
  ...refusedCells(id, files),
]

function answerSentences({ skeleton, written, changes, differences, files }: AssembledData): string[] {
  const rows = files.reduce((sum, { account }) => sum + account.read, 0)
  const first = `${counted(changes.length, 'value')} of ${skeleton} ${changes.length === 1 ? 'comes' : 'come'} from ${counted(files.length, 'table')} (${counted(rows, 'row')} read)${written === '' ? '' : `; the complete scenario is ${written}`}.`
  if (differences === null) return [first]
  return [
    first,
    differences.length === 0
      ? 'Nothing has changed since it was written last.'
      : `Since it was written last ${counted(differences.length, 'value has', 'values have')} changed.`,
  ]
}

function changeTable(changes: AssembledData['changes']): Table {
  const short = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)} …` : text)
  return tableOf<AssembledData['changes'][number]>({
    caption: 'Where each value comes from',
    columns: [
      wordColumn('Value', 'path', 'path in the scenario', ({ path }) => path),
      {
        head: 'Is',
        align: 'left',
        pageOnly: true,
        text: ({ value }) => short(value),
        data: [['value', 'as the scenario says it', ({ value }) => value]],
      },
      wordColumn('From', 'source', 'table, and what it rests on', ({ from }) => from),
    ],
    rows: changes,
  })
}

function differenceTable(differences: readonly Difference[]): Table {
  return tableOf<Difference>({
    caption: 'What the data changed',
    columns: [
      wordColumn('Value', 'path', 'path in the scenario', ({ path, places }) =>
        places.length === 0 ? path : `${path} (${places.slice(0, 3).join(', ')})`,
      ),
      wordColumn('Before', 'before', 'as written last; empty: it was not there', ({ before }) => before ?? ''),
      wordColumn('Now', 'after', 'empty: it is gone', ({ after }) => after ?? ''),
    ],
    rows: differences,
  })
}
