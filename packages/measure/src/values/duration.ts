/** A length of time in a cell: seconds, minutes, `mm:ss`, `1 min 5 s`, a time of a spreadsheet. */
import type { Cell } from '../table/rawTable.ts'
import { type NumberStyle, readNumber } from './numberStyle.ts'

/** Seconds of a unit; centiminutes are what decimal-minute watches show. */
const TIME_UNITS = { ms: 0.001, s: 1, cmin: 0.6, min: 60, h: 3600, d: 86_400 } as const

/** A unit in which tables write times. */
export type TimeUnit = keyof typeof TIME_UNITS

const NAMES: Readonly<Record<TimeUnit, readonly string[]>> = {
  ms: ['ms', 'msec', 'millisecond', 'milliseconds'],
  s: ['s', 'sec', 'secs', 'second', 'seconds', 'sek', 'sekunden', '"', '″'],
  cmin: ['cmin', 'centiminute', 'centiminutes', 'hm'],
  min: ['min', 'mins', 'minute', 'minutes', 'minuten', "'", '′'],
  h: ['h', 'hr', 'hrs', 'hour', 'hours', 'std', 'stunden'],
  d: ['d', 'day', 'days', 'tage'],
}

/**
 * The unit that a word names.
 *
 * @example timeUnit('sec.') // => 's'
 */
export function timeUnit(word: string): TimeUnit | null {
  const plain = word.trim().toLowerCase().replace(/\.$/, '')
  return (Object.keys(NAMES) as TimeUnit[]).find((unit) => NAMES[unit].includes(plain)) ?? null
}

/** How the times of a column are written. */
export interface DurationStyle {
  readonly numbers: NumberStyle
  /** of a bare number */
  readonly unit: TimeUnit | null
  /** what `1:05` is */
  readonly clock: 'm:ss' | 'h:mm'
}

/** A time in seconds, or why there is none. */
export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly reason: string }

const no = (reason: string): Read<never> => ({ ok: false, reason })
const yes = <T>(value: T): Read<T> => ({ ok: true, value })

/**
 * The seconds of a cell, not rounded; 0 and below are told apart by who asks.
 *
 * @example readDuration({ kind: 'text', text: '1:05', value: null }, { numbers: 'point', unit: null, clock: 'm:ss' }) // => { ok: true, value: 65 }
 */
export function readDuration(cell: Cell, style: DurationStyle): Read<number> {
  const { kind, text, value } = cell
  if (kind === 'empty') return no('it is empty')
  if (kind === 'error') return no(`the spreadsheet has an error there (${text})`)
  if (kind === 'truth') return no(`"${text}" is no time`)
  if (kind === 'date') return no(`${text} is a day with its time, not a length of time`)
  if (kind === 'time') return cell.hoursAndMinutes === true && style.clock === 'm:ss' ? minutesForHours(value!) : yes(value!)
  if (kind === 'number') return style.unit === null ? no(`${text} has no unit`) : yes(value! * TIME_UNITS[style.unit])
  return fromText(text, style)
}

/** 1:05 typed for 1 min 5 s becomes 1 h 5 min in a spreadsheet: below an hour and a half nobody can tell. */
function minutesForHours(seconds: number): Read<number> {
  return no(
    `the spreadsheet holds it as ${Math.floor(seconds / 3600)} h ${Math.round((seconds % 3600) / 60)} min; say whether its times are hours and minutes (--clock h:mm), or write them as minutes and seconds`,
  )
}

function fromText(text: string, style: DurationStyle): Read<number> {
  if (/^[\d.,]+$/.test(text)) return fromNumber(text, style)
  if (/^[=@]/.test(text)) return no(`"${text}" is a formula, and nothing is computed`)
  const clock = /^(\d{1,3}):([0-5]?\d)(?::([0-5]?\d))?(?:[.,](\d+))?$/.exec(text)
  if (clock !== null) {
    const [, first, second, third, part] = clock
    const fraction = part === undefined ? 0 : Number(`0.${part}`)
    if (third !== undefined) return yes(3600 * Number(first) + 60 * Number(second) + Number(third) + fraction)
    if (style.clock === 'h:mm') return part === undefined ? yes(3600 * Number(first) + 60 * Number(second)) : no(`"${text}" is no time`)
    return yes(60 * Number(first) + Number(second) + fraction)
  }
  const pieces = [...text.matchAll(/([\d., ]*\d)\s*([a-zA-Z]+\.?|["'″′])(?=[\s\d,;]|$)\s*/g)]
  if (pieces.length > 0 && pieces.map(([whole]) => whole).join('') === text) {
    let sum = 0
    let last = Infinity
    for (const [, number, word] of pieces) {
      const unit = timeUnit(word!)
      const amount = readNumber(number!.trim(), style.numbers)
      if (unit === null || amount === null || TIME_UNITS[unit] >= last) return no(`"${text}" is no time`)
      if (amount === 'unsure') return no(unsure(number!))
      sum += amount * TIME_UNITS[unit]
      last = TIME_UNITS[unit]
    }
    return yes(sum)
  }
  return fromNumber(text, style)
}

function fromNumber(text: string, style: DurationStyle): Read<number> {
  const number = readNumber(text, style.numbers)
  if (number === null) return no(`"${text}" is no time`)
  if (number === 'unsure') return no(unsure(text))
  return style.unit === null ? no(`"${text}" has no unit`) : yes(number * TIME_UNITS[style.unit])
}

const unsure = (text: string): string =>
  `"${text}" may have decimals or thousands behind its ${text.includes(',') ? 'comma' : 'point'}; say which (--decimal comma or --decimal point)`
