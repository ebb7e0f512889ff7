/** A table of measured times: long or wide, in the words and units of whoever kept it. */
import { type Account, bookkeeping, isFormula } from '../table/account.ts'
import { type Columns, findColumns } from '../table/heads.ts'
import { likeNames } from '../table/likeNames.ts'
import { type Cell, EMPTY, placeOf, type RawRow, type RawTable } from '../table/rawTable.ts'
import { remembered } from '../table/remembered.ts'
import { refusal } from '../table/tableError.ts'
import { type DurationStyle, type Read, readDuration, timeUnit, type TimeUnit } from '../values/duration.ts'
import { type DayOrder, dayOrder, readInstant } from '../values/instant.ts'
import { type NumberStyle, numberStyle } from '../values/numberStyle.ts'
import { guessedUnit } from './bareNumbers.ts'
import type { Observation, TimeTable } from './observation.ts'
import { readRatings } from './ratings.ts'
import { referable } from './referable.ts'
import { withoutSums } from './sums.ts'
import { unitColumn } from './unitColumn.ts'
import { cycleColumns, entriesOf, FORMS, numericColumns, taskColumns, textOf, TIME_ROLES } from './timeForm.ts'

/** What the user says of a table of times. */
export interface TimeOptions {
  /** head of a column by what it is for */
  readonly columns?: Readonly<Record<string, string>>
  /** of bare numbers under a head without a unit */
  readonly unit?: TimeUnit
  readonly decimal?: 'point' | 'comma'
  /** what `1:05` is. Default: m:ss */
  readonly clock?: DurationStyle['clock']
  readonly days?: DayOrder
  /** the task, where the table names none */
  readonly task?: string
}

const LONGEST_SECONDS = 86_400

/**
 * The times of a table.
 *
 * @throws TableError  where it is no table of times, or its unit cannot be known
 * @example readTimes(readTable(new TextEncoder().encode('task,seconds\nwire,45\nwire,47\n'), 'times.csv')).observations.length // => 2
 */
export function readTimes(table: RawTable, options: TimeOptions = {}): TimeTable {
  const columns = findColumns(
    table,
    TIME_ROLES,
    options.columns ?? {},
    (at, heads) =>
      at.has('time') || (at.has('start') && at.has('end')) || cycleColumns(at, heads).length >= 2 || taskColumns(at, heads).length >= 1,
    'a time study has a column of times, or a column for each task',
  )
  const unitsAt = options.unit === undefined ? unitColumn(table, columns, Object.values(options.columns ?? {})) : null
  const { heads } = columns
  const at = new Map([...columns.at].filter(([, column]) => column !== unitsAt))
  const form = at.has('time') || (at.has('start') && at.has('end')) ? 'long' : at.has('task') ? 'tasks' : 'cycles'
  const timeColumns =
    form === 'long'
      ? [at.get('time') ?? at.get('end')!]
      : form === 'tasks'
        ? cycleColumns(at, heads)
        : numericColumns(table, { ...columns, at })
  if (timeColumns.length === 0) throw refusal(table.file, '', 'no column holds times', 'name it (--columns "time=Seconds")')
  const books = bookkeeping(table, columns, unitsAt)
  const cellsOf = timeColumns.flatMap((column) => books.body.map((row) => row.cells[column] ?? EMPTY))
  const numbers: NumberStyle =
    options.decimal ??
    numberStyle(
      cellsOf.filter(({ kind }) => kind === 'text').map(({ text }) => text),
      table.separator,
    )
  const rolesSaid = columns.said.filter((one) => [...at.keys()].some((role) => one.startsWith(`${role}: `)))
  const said = [...table.notes, `columns: ${rolesSaid.join(', ') || heads.map(({ text }) => `"${text}"`).join(', ')}`, FORMS[form]]
  const doubts: string[] = []
  const styleOf = (column: number): DurationStyle => {
    const unit = options.unit ?? heads[column]!.unit
    return { numbers, unit, clock: options.clock ?? 'm:ss' }
  }
  const styles = new Map(timeColumns.map((column) => [column, styleOf(column)]))
  const byEnds = form === 'long' && !at.has('time')
  const units = byEnds || unitsAt !== null ? null : guessedUnit(table, columns, books.body, styles, said, doubts)
  if (unitsAt !== null) said.push(`the unit of each row stands under "${heads[unitsAt]!.text}"`)
  const clock = options.clock === undefined && !byEnds ? cellsOf.find(({ text }) => /^\d{1,3}:[0-5]?\d$/.test(text)) : undefined
  if (clock !== undefined) said.push(`times such as ${clock.text} are minutes and seconds`)
  const order = options.days ?? orderOf(table, columns, books.body)
  const ratings = readRatings(books.body, at.get('rating') ?? null, table.separator)
  if (ratings !== null) said.push(ratings.said)
  const observations: Observation[] = []
  const durationOf = new Map([...styles].map(([column, style]) => [column, remembered((cell: Cell) => readDuration(cell, style))]))
  const durationAt = (row: RawRow, cell: Cell, column: number): Read<number> => {
    if (unitsAt === null) return durationOf.get(column)!(cell)
    const style = styles.get(column)!
    return readDuration(cell, { ...style, unit: timeUnit((row.cells[unitsAt] ?? EMPTY).text) ?? style.unit })
  }
  const entries = entriesOf(form, { ...columns, at }, timeColumns, books.body, options.task, (row, cell, column) =>
    byEnds ? between(row, at, order) : durationAt(row, cell, column),
  )
  let empty = 0
  const values = entries.flatMap((mine) =>
    mine.map(({ row, column, time }) => ({ row: row.line, column, value: !byEnds && time.ok ? time.value : null })),
  )
  const sums = withoutSums(form, values)
  for (const [index, row] of books.body.entries()) {
    const mine = entries[index]!
    let taken = 0
    let first: { reason: string; column: number } | null = null
    for (const { column, task, cell, time } of mine) {
      if (cell.kind === 'empty' && form !== 'long') {
        empty++
        continue
      }
      const refuse = (reason: string, where = column): void => {
        first ??= { reason, column: where }
        if (form !== 'long') books.refuseCell(row, where, reason)
      }
      const why = sums.get(`${row.line}/${column}`)
      if (why !== undefined) {
        refuse(why)
        continue
      }
      if (task === '') {
        refuse(
          table.spreadsheet ? 'it names no task' : 'it names no task (of merged cells only the first keeps its text: fill in the others)',
          at.get('task') ?? column,
        )
        continue
      }
      if (isFormula(task)) {
        refuse(`"${task}" is a formula, and nothing is computed`, at.get('task') ?? column)
        continue
      }
      if (at.has('variant') && textOf(row, at.get('variant')) === null) {
        refuse('it names no variant', at.get('variant')!)
        continue
      }
      if (!time.ok) {
        refuse(time.reason)
        continue
      }
      const seconds = Number(time.value.toPrecision(15))
      if (!(seconds > 0)) {
        refuse(`${cell.text === '' ? seconds : `"${cell.text}"`} is no time above 0`)
        continue
      }
      if (seconds > LONGEST_SECONDS) {
        refuse(`"${cell.text}" is more than a day for one task`)
        continue
      }
      const rating = ratings?.of(row) ?? null
      if (rating !== null && !rating.ok) {
        refuse(rating.reason, at.get('rating')!)
        continue
      }
      taken++
      observations.push({
        task,
        variant: textOf(row, at.get('variant')),
        operator: textOf(row, at.get('operator')),
        observedSeconds: seconds,
        rating: rating?.value ?? null,
        when: whenOf(row, at, order),
        line: row.line,
        place: placeOf(table, row.line, column, heads[column]!.text),
      })
    }
    if (taken === 0)
      books.refuseRow(
        row,
        first === null ? 'no time stands in it' : (first as { reason: string }).reason,
        first === null ? undefined : (first as { column: number }).column,
      )
  }
  if (empty > 0) said.push(`${empty} cells without a time`)
  const account: Account = books.account()
  if (observations.length === 0) throw nothingRead(table, account)
  doubts.push(
    ...likeNames(
      observations.map(({ task }) => task),
      'tasks',
    ),
    ...likeNames(
      observations.flatMap(({ variant }) => variant ?? []),
      'variants',
    ),
  )
  return {
    file: table.file,
    form,
    observations,
    account,
    said,
    doubts,
    column: referable(table, form, columns, units, observations, options.decimal),
  }
}

/** The order of days in the columns of instants; a column that shows both is refused. */
export function orderOf(
  table: RawTable,
  { at }: Pick<Columns, 'at'>,
  body: readonly RawRow[],
  roles: readonly string[] = ['start', 'end', 'when'],
): DayOrder | null {
  const texts = roles.flatMap((role) => (at.has(role) ? body.map((row) => (row.cells[at.get(role)!] ?? EMPTY).text) : []))
  const order = dayOrder(texts)
  if (order === 'both')
    throw refusal(table.file, '', 'some of its days can only be day first and some only month first', 'write all days as 2026-11-03')
  return order
}

/** Seconds from start to end of a row; past midnight where both are clock times. */
function between(row: RawRow, at: Columns['at'], order: DayOrder | null): ReturnType<typeof readDuration> {
  const [start, end] = ['start', 'end'].map((role) => readInstant(row.cells[at.get(role)!] ?? EMPTY, order))
  if (!start!.ok) return start!
  if (!end!.ok) return end!
  const seconds = end!.value.seconds - start!.value.seconds
  if (start!.value.is === 'clock' && end!.value.is === 'clock') {
    const past = seconds < 0 ? seconds + 86_400 : seconds
    return past > 43_200 ? { ok: false, reason: 'it ends before it starts' } : { ok: true, value: past }
  }
  if (start!.value.is !== end!.value.is) return { ok: false, reason: 'one end has a day and the other has none' }
  return seconds < 0 ? { ok: false, reason: 'it ends before it starts' } : { ok: true, value: seconds }
}

function whenOf(row: RawRow, at: Columns['at'], order: DayOrder | null): number | null {
  const role = at.has('when') ? 'when' : at.has('start') ? 'start' : null
  if (role === null) return null
  const read = readInstant(row.cells[at.get(role)!] ?? EMPTY, order)
  return read.ok && read.value.is !== 'day' ? read.value.seconds : null
}

function nothingRead(table: RawTable, { refusals }: Account): Error {
  const first = refusals.filter(({ reason }) => !/^it (is empty|stands above)/.test(reason))[0] ?? refusals[0]
  return refusal(
    table.file,
    first?.place ?? '',
    first === undefined ? 'no row stands below the heads' : `no row can be read; here ${first.reason}`,
    '',
  )
}
