/** An instant in a cell: a day with its time, a day, or a clock time. */
import type { Cell } from '../table/rawTable.ts'
import type { Read } from './duration.ts'

/** Seconds of the wall clock; no summer time is added or taken away. */
export interface Instant {
  readonly is: 'instant' | 'day' | 'clock'
  /** from 1970-01-01 00:00; of a clock time from midnight */
  readonly seconds: number
}

/** Which comes first in 03/11/2026. */
export type DayOrder = 'day first' | 'month first'

const no = (reason: string): Read<never> => ({ ok: false, reason })
const yes = (is: Instant['is'], seconds: number): Read<Instant> => ({ ok: true, value: { is, seconds } })

const CLOCK = String.raw`(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([AaPp])?\.?[Mm]?\.?`
const ISO = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,]+${CLOCK})?Z?$`)
const DAYS = new RegExp(String.raw`^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})(?:[T ,]+${CLOCK})?$`)
const ALONE = new RegExp(`^${CLOCK}$`)

/**
 * The order of day and month in a column, by days beyond the twelfth; points go with the day first.
 *
 * @returns null: nothing tells
 * @example dayOrder(['03/11/2026', '14/11/2026']) // => 'day first'
 */
export function dayOrder(texts: readonly string[]): DayOrder | 'both' | null {
  const found = new Set<DayOrder>()
  for (const text of texts) {
    const match = DAYS.exec(text)
    if (match === null) continue
    if (match[2] === '.' || Number(match[1]) > 12) found.add('day first')
    if (match[2] !== '.' && Number(match[3]) > 12) found.add('month first')
  }
  return found.size === 2 ? 'both' : ([...found][0] ?? null)
}

/**
 * The instant of a cell.
 *
 * @param order  null: days written with `/` or `-` are refused
 * @example readInstant({ kind: 'text', text: '2026-11-03 06:12', value: null }, null) // => { ok: true, value: { is: 'instant', seconds: 1793686320 } }
 */
export function readInstant({ kind, text, value }: Cell, order: DayOrder | null): Read<Instant> {
  if (kind === 'empty') return no('it is empty')
  if (kind === 'error') return no(`the spreadsheet has an error there (${text})`)
  if (kind === 'date') return yes(value! % 86_400 === 0 ? 'day' : 'instant', value!)
  if (kind === 'time') return value! < 86_400 ? yes('clock', value!) : no(`${text} is no time of a day`)
  if (kind !== 'text') return no(`"${text}" is no day or time`)
  const iso = ISO.exec(text)
  if (iso !== null) return day(text, Number(iso[1]), Number(iso[2]), Number(iso[3]), iso.slice(4))
  const days = DAYS.exec(text)
  if (days !== null) {
    if (days[2] !== '.' && order === null)
      return no(`in "${text}" the day or the month may come first; say which (--dates dmy or --dates mdy), or write 2026-11-03`)
    const dayFirst = days[2] === '.' || order === 'day first'
    const year = days[4]!.length === 2 ? 2000 + Number(days[4]) : Number(days[4])
    return day(text, year, Number(days[dayFirst ? 3 : 1]), Number(days[dayFirst ? 1 : 3]), days.slice(5))
  }
  const alone = ALONE.exec(text)
  if (alone === null) return no(`"${text}" is no day or time`)
  const seconds = clockSeconds(alone.slice(1))
  return seconds === null ? no(`"${text}" is no time of a day`) : yes('clock', seconds)
}

function day(text: string, year: number, month: number, date: number, clock: readonly (string | undefined)[]): Read<Instant> {
  const start = Date.UTC(year, month - 1, date) / 1000
  const back = new Date(start * 1000)
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== date || year < 1970 || year > 2200) return no(`there is no day "${text}"`)
  if (clock[0] === undefined) return yes('day', start)
  const seconds = clockSeconds(clock)
  return seconds === null ? no(`"${text}" is no time of a day`) : yes('instant', start + seconds)
}

function clockSeconds([hour, minute, second = '0', half]: readonly (string | undefined)[]): number | null {
  let hours = Number(hour)
  const [minutes, seconds] = [Number(minute), Number(second)]
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return null
    hours = (hours % 12) + (half.toLowerCase() === 'p' ? 12 : 0)
  }
  if (hours > 24 || minutes > 59 || seconds > 59 || (hours === 24 && minutes + seconds > 0)) return null
  return 3600 * hours + 60 * minutes + seconds
}

/**
 * As people write it.
 *
 * @example instantText(1793685600) // => '2026-11-03 06:00'
 */
export const instantText = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(0, 16).replace('T', ' ')

/**
 * The instant that a text names: a day, or a day with its time.
 *
 * @returns seconds from 1970-01-01 of the wall clock; null: it is none
 * @example instantOfText('2026-11-03 06:00') // => 1793685600
 */
export function instantOfText(text: string): number | null {
  const read = readInstant({ kind: 'text', text: text.trim(), value: null }, null)
  return read.ok && read.value.is !== 'clock' ? read.value.seconds : null
}
