/** A stop log: what stood, when, for how long, and why. */
import { type Account, bookkeeping, isFormula } from '../table/account.ts'
import { findColumns, type Roles } from '../table/heads.ts'
import { likeNames } from '../table/likeNames.ts'
import { EMPTY, type RawRow, type RawTable } from '../table/rawTable.ts'
import { refusal } from '../table/tableError.ts'
import { type DurationStyle, type Read, readDuration, type TimeUnit } from '../values/duration.ts'
import { type DayOrder, type Instant, readInstant } from '../values/instant.ts'
import { numberStyle } from '../values/numberStyle.ts'
import { orderOf } from '../times/readTimes.ts'

/** One stop. */
export interface Stop {
  readonly place: string
  readonly cause: string
  /** of the wall clock, seconds from 1970-01-01 */
  readonly start: number
  /** null: it was not over when the log ended */
  readonly end: number | null
  readonly line: number
}

/** A stop log, understood. */
export interface StopLog {
  readonly file: string
  readonly stops: readonly Stop[]
  readonly account: Account
  readonly said: readonly string[]
  readonly doubts: readonly string[]
}

/** What the user says of a stop log. */
export interface StopLogOptions {
  readonly columns?: Readonly<Record<string, string>>
  /** of durations under a head without one */
  readonly unit?: TimeUnit
  readonly decimal?: 'point' | 'comma'
  readonly clock?: DurationStyle['clock']
  readonly days?: DayOrder
}

const STOP_ROLES = {
  place: ['place', 'station', 'machine', 'where', 'location', 'zone', 'equipment', 'asset', 'ort', 'maschine', 'anlage'],
  cause: ['cause', 'reason', 'fault', 'what', 'description', 'event', 'alarm', 'code', 'grund', 'ursache', 'störung'],
  start: ['start', 'from', 'begin', 'starttime', 'stopped', 'down', 'downfrom', 'beginn', 'von'],
  end: ['end', 'to', 'until', 'endtime', 'restart', 'restarted', 'up', 'upagain', 'ende', 'bis'],
  lasts: ['lasts', 'duration', 'downtime', 'time', 'stoptime', 'minutes', 'min', 'seconds', 'length', 'dauer'],
  when: ['date', 'day', 'when', 'datum'],
  remark: ['remark', 'remarks', 'note', 'notes', 'comment', 'bemerkung'],
  operator: ['operator', 'who', 'by', 'shift', 'schicht'],
} as const satisfies Roles

const DAY = 86_400
/** longer is a month that nobody closed */
const LONGEST = 31 * DAY

/**
 * The stops of a table.
 *
 * @throws TableError  where it is no stop log
 * @example readStops(readTable(new TextEncoder().encode('place,cause,start,end\nS3,tool,2026-11-03 06:10,2026-11-03 06:15\n'), 'stops.csv')).stops[0].end // => 1793686500
 */
export function readStops(table: RawTable, options: StopLogOptions = {}): StopLog {
  const columns = findColumns(
    table,
    STOP_ROLES,
    options.columns ?? {},
    (at) => at.has('start') && (at.has('end') || at.has('lasts')) && (at.has('place') || at.has('cause')),
    'a stop log has a start, an end or a duration, and a place or a cause',
  )
  const { at, heads } = columns
  const books = bookkeeping(table, columns)
  const order = options.days ?? orderOf(table, columns, books.body)
  const texts = at.has('lasts') ? books.body.map((row) => (row.cells[at.get('lasts')!] ?? EMPTY).text) : []
  const style: DurationStyle = {
    numbers: options.decimal ?? numberStyle(texts, table.separator),
    unit: options.unit ?? (at.has('lasts') ? heads[at.get('lasts')!]!.unit : null),
    // a stop of 1:05 may be hours as well as minutes: only who knows the log can say
    clock: options.clock ?? 'm:ss',
  }
  const clocks = texts.filter((text) => /^\d{1,2}:\d{2}$/.test(text))
  if (clocks.length > 0 && options.clock === undefined && !at.has('end'))
    throw refusal(
      table.file,
      '',
      `durations such as "${clocks[0]}" may be minutes and seconds or hours and minutes`,
      'say which (--clock m:ss or --clock h:mm)',
    )
  const stops: Stop[] = []
  const seen = new Map<string, number>()
  const doubts: string[] = []
  let undated = 0
  for (const row of books.body) {
    const read = stopOf(row, at, order, style)
    if (!read.ok) {
      books.refuseRow(row, read.reason, read.column)
      continue
    }
    const [place, cause] = ['place', 'cause'].map((role) =>
      at.has(role) ? (row.cells[at.get(role)!] ?? EMPTY).text.replaceAll(/\s+/g, ' ') : '',
    )
    if (place === '' && at.has('place')) {
      books.refuseRow(row, 'it names no place', at.get('place')!)
      continue
    }
    if (isFormula(place!) || isFormula(cause!)) {
      books.refuseRow(row, 'a name in it is a formula, and nothing is computed', at.get(isFormula(place!) ? 'place' : 'cause')!)
      continue
    }
    if (read.value.undated) undated++
    const { start, end } = read.value
    const stop = { place: place === '' ? 'line' : place!, cause: cause === '' ? 'stop' : cause!, start, end, line: row.line }
    const key = JSON.stringify([stop.place, stop.cause, start, end])
    const twin = seen.get(key)
    if (twin !== undefined) {
      books.refuseRow(row, `it is the same stop as in line ${twin}`)
      continue
    }
    seen.set(key, stop.line)
    stops.push(stop)
  }
  if (undated > 0)
    throw refusal(
      table.file,
      '',
      `${undated} starts have a clock time and no day`,
      'give a column of days (--columns "when=Date"), or write 2026-11-03 06:10',
    )
  const account: Account = books.account()
  if (stops.length === 0)
    throw refusal(
      table.file,
      account.refusals[0]?.place ?? '',
      `no stop can be read${account.refusals[0] === undefined ? '' : `; here ${account.refusals[0].reason}`}`,
      '',
    )
  doubts.push(
    ...likeNames(
      stops.map(({ place }) => place),
      'places',
    ),
    ...likeNames(
      stops.map(({ cause }) => cause),
      'causes',
    ),
  )
  return { file: table.file, stops, account, said: [...table.notes, `columns: ${columns.said.join(', ')}`], doubts }
}

/** A stop as its row has it, or what is wrong with the row. */
type StopOfRow =
  | { readonly ok: true; readonly value: { start: number; end: number | null; undated: boolean } }
  | { readonly ok: false; readonly reason: string; readonly column: number }

function stopOf(row: RawRow, at: ReadonlyMap<string, number>, order: DayOrder | null, style: DurationStyle): StopOfRow {
  const cell = (role: string) => row.cells[at.get(role) ?? -1] ?? EMPTY
  const fail = (role: string, reason: string): StopOfRow => ({ ok: false, reason, column: at.get(role)! })
  const day = at.has('when') ? readInstant(cell('when'), order) : null
  const start = joined(readInstant(cell('start'), order), day)
  if (!start.ok) return fail('start', start.reason)
  let end: number | null = null
  const lasts = at.has('lasts') && cell('lasts').kind !== 'empty' ? readDuration(cell('lasts'), style) : null
  if (at.has('end') && cell('end').kind !== 'empty') {
    const alone = readInstant(cell('end'), order)
    const read = joined(alone, day)
    if (!read.ok) return fail('end', read.reason)
    // a clock time alone that lies before the start is of the next day
    end = read.value.seconds < start.value.seconds && alone.ok && alone.value.is === 'clock' ? read.value.seconds + DAY : read.value.seconds
    if (start.value.is === 'instant' && read.value.is === 'clock') end = past(start.value.seconds, read.value.seconds)
    // over midnight a stop may last the rest of a shift; 11:20 to 11:05 is a slip
    const over = end > read.value.seconds || read.value.is === 'clock'
    if (end < start.value.seconds || (over && end - start.value.seconds > DAY / 2)) return fail('end', 'it ends before it starts')
    if (lasts?.ok === true && at.has('lasts') && Math.abs(end - start.value.seconds - lasts.value) > 60 + 0.05 * lasts.value)
      return fail(
        'lasts',
        `it says ${cell('lasts').text}, but from its start to its end are ${Math.round((end - start.value.seconds) / 6) / 10} min`,
      )
  } else if (lasts !== null) {
    if (!lasts.ok) return fail('lasts', lasts.reason)
    if (lasts.value < 0) return fail('lasts', 'it is below 0')
    end = start.value.seconds + lasts.value
  } else if (!at.has('end')) return fail('lasts', 'it is empty')
  if (end !== null && end - start.value.seconds > LONGEST) return fail(at.has('end') ? 'end' : 'lasts', 'it would last more than a month')
  if (end !== null && end === start.value.seconds) return fail(at.has('end') ? 'end' : 'lasts', 'it would last 0 s')
  return { ok: true, value: { start: start.value.seconds, end, undated: start.value.is === 'clock' } }
}

/** The clock time that follows an instant. */
const past = (from: number, clock: number): number => {
  const midnight = Math.floor(from / DAY) * DAY
  return midnight + clock < from ? midnight + clock + DAY : midnight + clock
}

/** A clock time with the day of its row. */
function joined(read: Read<Instant>, day: Read<Instant> | null): Read<Instant> {
  if (!read.ok || read.value.is !== 'clock' || day === null)
    return read.ok && read.value.is === 'day' ? { ok: false, reason: 'it has a day and no time' } : read
  if (!day.ok) return day
  return { ok: true, value: { is: 'instant', seconds: Math.floor(day.value.seconds / DAY) * DAY + read.value.seconds } }
}
