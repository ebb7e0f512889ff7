/** The forms of a table of times, long and wide, and which of its columns hold times. */
import { isTotal } from '../table/account.ts'
import type { Columns, Roles } from '../table/heads.ts'
import { type Cell, EMPTY, type RawRow, type RawTable } from '../table/rawTable.ts'
import type { Read, TimeUnit } from '../values/duration.ts'
import type { TimeTable } from './observation.ts'

/** Roles of columns, and their usual heads. */
export const TIME_ROLES = {
  task: [
    'task',
    'taskname',
    'element',
    'workelement',
    'operation',
    'step',
    'op',
    'activity',
    'process',
    'vorgang',
    'tätigkeit',
    'arbeitsgang',
  ],
  time: [
    'time',
    'tasktime',
    'worktime',
    'cycletime',
    'duration',
    'seconds',
    'sec',
    's',
    'observed',
    'observedtime',
    'measured',
    'measuredtime',
    'reading',
    'min',
    'minutes',
    'zeit',
    'dauer',
    'sekunden',
  ],
  start: ['start', 'starttime', 'begin', 'from', 'started', 'beginn', 'von'],
  end: ['end', 'endtime', 'stop', 'to', 'finished', 'finish', 'ende', 'bis'],
  variant: ['variant', 'model', 'product', 'type', 'unit', 'variante', 'modell', 'typ'],
  operator: ['operator', 'worker', 'person', 'who', 'name', 'operatorid', 'mitarbeiter', 'person'],
  rating: ['rating', 'ratingpercent', 'performance', 'pace', 'leistungsgrad', 'lg'],
  when: ['when', 'datetime', 'timestamp', 'date', 'clock', 'day', 'at', 'datum', 'uhrzeit'],
  cycle: ['cycle', 'cycleno', 'no', 'nr', 'number', 'obs', 'observation', 'serial', 'serialno', 'id', 'zyklus'],
  station: ['station', 'place', 'workstation', 'platz'],
  remark: ['remark', 'remarks', 'note', 'notes', 'comment', 'comments', 'bemerkung'],
} as const satisfies Roles

const CYCLE_HEAD = /^(cycle|cyc|obs|observation|reading|time|no|nr|n|t|x|zyklus)?\d{1,3}$/

/** A time of the table. */
export interface Entry {
  readonly row: RawRow
  readonly column: number
  readonly task: string
  readonly cell: Cell
  /** in seconds */
  readonly time: Read<number>
}

export const FORMS = {
  long: 'a row for each time',
  cycles: 'a row for each cycle, a column for each task',
  tasks: 'a row for each task, a column for each cycle',
} as const

export const cycleColumns = (at: ReadonlyMap<string, number>, heads: Columns['heads']): number[] =>
  at.has('task') ? heads.flatMap(({ plain }, index) => (CYCLE_HEAD.test(plain) && ![...at.values()].includes(index) ? [index] : [])) : []

/** Columns of a wide table that are nothing else. */
export const taskColumns = (at: ReadonlyMap<string, number>, heads: Columns['heads']): number[] =>
  at.has('task') || !(at.has('cycle') || at.has('when') || at.has('operator') || at.has('variant'))
    ? []
    : heads.flatMap(({ text }, index) => (text !== '' && !isTotal(text) && ![...at.values()].includes(index) ? [index] : []))

/** Of a row for each cycle: the columns in which most cells are numbers or times. */
export function numericColumns(table: RawTable, { at, heads, bodyFrom }: Columns): number[] {
  const body = table.rows.slice(bodyFrom)
  return taskColumns(at, heads).filter((column) => {
    const cells = body.map((row) => row.cells[column] ?? EMPTY).filter(({ kind }) => kind !== 'empty')
    const times = cells.filter(({ kind, text }) => kind === 'number' || kind === 'time' || /^\d/.test(text))
    return times.length > 0 && 2 * times.length >= cells.length
  })
}

export function entriesOf(
  form: TimeTable['form'],
  { at, heads }: Columns,
  columns: readonly number[],
  body: readonly RawRow[],
  task: string | undefined,
  timeOf: (row: RawRow, cell: Cell, column: number) => Read<number>,
): Entry[][] {
  return body.map((row) =>
    columns.map((column): Entry => {
      const named =
        form === 'cycles'
          ? taskHead(heads[column]!.text, heads[column]!.unit)
          : at.has('task')
            ? (textOf(row, at.get('task')) ?? '')
            : (task ?? 'task')
      const cell = row.cells[column] ?? EMPTY
      return { row, column, task: named, cell, time: timeOf(row, cell, column) }
    }),
  )
}

/** `wire (s)` → `wire` */
function taskHead(text: string, unit: TimeUnit | null): string {
  if (unit === null) return text
  return (
    text
      .replace(/[([{][^)\]}]*[)\]}]\s*$/, '')
      .replace(/[\s_,/-]+(in[\s_]+)?[A-Za-z]+\.?$/, (end) => (/[([{]/.test(text) ? end : ''))
      .trim() || text
  )
}

const ODD_BLANKS = /\s\s|[^\S ]/

export const textOf = (row: RawRow, column: number | undefined): string | null => {
  const text = column === undefined ? '' : (row.cells[column] ?? EMPTY).text
  return text === '' ? null : ODD_BLANKS.test(text) ? text.replaceAll(/\s+/g, ' ') : text
}
