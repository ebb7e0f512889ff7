/** Quantities: a number with a unit, read exactly. Everything inside is in seconds, metres and metres per second. */
import { type Decimal, parseDecimal, toNumber } from './decimal.ts'
import * as say from '../problems/messages.ts'
import { nearest, REACH_SECONDS } from '@loopwright/line/check'

export type Dimension = 'duration' | 'length' | 'speed' | 'acceleration'

/** Factor to the base unit, as a fraction. */
type Factor = readonly [numerator: bigint, denominator: bigint]

const DURATION: Record<string, Factor> = { ms: [1n, 1000n], s: [1n, 1n], min: [60n, 1n], h: [3600n, 1n], d: [86_400n, 1n] }
const LENGTH: Record<string, Factor> = { mm: [1n, 1000n], cm: [1n, 100n], m: [1n, 1n], in: [254n, 10_000n], ft: [3048n, 10_000n] }
const SPEED: Record<string, Factor> = {
  'm/s': [1n, 1n],
  'm/min': [1n, 60n],
  'mm/s': [1n, 1000n],
  'ft/min': [3048n, 600_000n],
  'ft/s': [3048n, 10_000n],
  'in/s': [254n, 10_000n],
}
const ACCELERATION: Record<string, Factor> = {
  'm/s²': [1n, 1n],
  'm/s2': [1n, 1n],
  'm/s^2': [1n, 1n],
  'mm/s²': [1n, 1000n],
  'mm/s2': [1n, 1000n],
  'ft/s²': [3048n, 10_000n],
  'ft/s2': [3048n, 10_000n],
}

/** A kind of quantity: its units, and how far its values may reach. */
export interface UnitTable {
  /** such as "a mass" */
  readonly name: string
  /** factor to the base unit by unit */
  readonly units: Readonly<Record<string, Factor>>
  /** for proposals; the likeliest first */
  readonly proposals: readonly string[]
  /** above 0; smaller ones are too small to compute with. Default: none is */
  readonly least?: number
  readonly most: number
  readonly mostText: string
}

const DIMENSIONS: Record<Dimension, UnitTable> = {
  duration: { name: 'a time', units: DURATION, proposals: ['s', 'min'], most: REACH_SECONDS, mostText: '2^32 s, about 136 years' },
  length: { name: 'a length', units: LENGTH, proposals: ['m', 'mm'], most: 1e6, mostText: '1000000 m' },
  speed: { name: 'a speed', units: SPEED, proposals: ['m/min', 'm/s'], least: 1e-6, most: 1e6, mostText: '1000000 m/s' },
  acceleration: { name: 'an acceleration', units: ACCELERATION, proposals: ['m/s²'], least: 1e-6, most: 1e9, mostText: '1000000000 m/s²' },
}

/** Shop-floor spellings and what they mean here. */
const ALIASES: Record<string, string> = {
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  day: 'd',
  days: 'd',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  foot: 'ft',
  feet: 'ft',
  inch: 'in',
  inches: 'in',
  mpm: 'm/min',
  fpm: 'ft/min',
}

/** A finding inside a text: `start` counts from its first character. */
export interface Fault {
  readonly sentence: say.Sentence
  readonly start: number
  readonly length: number
}

export type Outcome<T> = { readonly value: T; readonly fault: null } | { readonly value: null; readonly fault: Fault }

export const failed = (sentence: say.Sentence, start: number, length: number): { value: null; fault: Fault } => ({
  value: null,
  fault: { sentence, start, length: Math.max(1, length) },
})

/** A number and what follows it, as written; columns count from 0 within the text. */
export interface Scanned {
  readonly number: string
  readonly unit: string
  readonly start: number
  readonly unitStart: number
  readonly end: number
}

const SCAN = /([+-]?(?:\d+(?:[.,]\d+)*(?:[eE][+-]?\d+)?|\.\d+))(\s*)([A-Za-zµ°%][A-Za-z0-9²³/^%]*|\/[a-z]+)?/y

/** Finds a number with an optional unit at `from` (blanks are skipped); null if there is none. */
export function scan(text: string, from: number): Scanned | null {
  let start = from
  while (text[start] === ' ') start++
  SCAN.lastIndex = start
  const match = SCAN.exec(text)
  if (match === null) return null
  const [, number = '', gap = '', unit = ''] = match
  const unitStart = start + number.length + (unit === '' ? 0 : gap.length)
  return { number, unit, start, unitStart, end: unitStart + unit.length }
}

const tableOf = (of: Dimension | UnitTable): UnitTable => (typeof of === 'string' ? DIMENSIONS[of] : of)

/** `5 s`, `5 min`: what a bare number most likely meant; 800 is no length in metres, and 0.25 no speed in m/min. */
export function proposals(number: string, dimension: Dimension | UnitTable): string[] {
  const [first = '', second] = tableOf(dimension).proposals
  const value = Math.abs(Number(number))
  const other = (dimension === 'length' && value >= 20) || (dimension === 'speed' && value < 2)
  const units = second === undefined ? [first] : other ? [second, first] : [first, second]
  return units.map((unit) => `${number} ${unit}`)
}

/** Digits of a scanned number; a decimal comma, a comma between thousands or a bare point is a fault that shows the right form. */
export function digitsOf(scanned: Scanned, text: string): Outcome<Decimal> {
  const shown = text.slice(scanned.start, scanned.end)
  const tail = scanned.unit === '' ? '' : ` ${scanned.unit}`
  if (scanned.number.includes(',')) {
    const thousands = /^[+-]?\d{1,3}(,\d{3}){2,}$|^[+-]?\d{1,3}(,\d{3})+\./.test(scanned.number)
    const right = thousands ? scanned.number.replaceAll(',', '') : scanned.number.replaceAll('.', '').replace(',', '.')
    return failed(say.decimalComma(shown, right + tail), scanned.start, scanned.number.length)
  }
  const decimal = parseDecimal(scanned.number)
  if (decimal !== null) return { value: decimal, fault: null }
  if (scanned.number.startsWith('.'))
    return failed(say.notAQuantity(shown, 'a number with a digit before the point'), scanned.start, scanned.number.length)
  if (/[eE]\d+$|[eE]\+\d+$/.test(scanned.number)) return failed(say.notFinite(shown), scanned.start, scanned.number.length)
  return failed(say.notAQuantity(shown, 'a number'), scanned.start, scanned.number.length)
}

/**
 * Value of a scanned number in the base unit.
 *
 * @param unit  stands in for a missing unit, as in `30..60 s`; '' if none may be missing
 */
export function inBaseUnit(scanned: Scanned, text: string, dimension: Dimension | UnitTable, unit = ''): Outcome<number> {
  const info = tableOf(dimension)
  const digits = digitsOf(scanned, text)
  if (digits.fault !== null) return digits
  const shown = text.slice(scanned.start, scanned.end)
  const written = scanned.unit === '' ? unit : scanned.unit
  if (written === '')
    return failed(say.unitMissing(shown, proposals(scanned.number, dimension)), scanned.start, scanned.end - scanned.start)
  const factor = Object.hasOwn(info.units, written) ? info.units[written]! : null
  if (factor === null) {
    const other = (Object.keys(DIMENSIONS) as Dimension[]).find((name) => Object.hasOwn(DIMENSIONS[name].units, written))
    const sentence = other
      ? say.unitOfOther(written, DIMENSIONS[other].name, info.name, Object.keys(info.units))
      : say.unitUnknown(written, nearUnit(written, info), Object.keys(info.units))
    return failed(sentence, scanned.unitStart, scanned.unit.length)
  }
  const value = toNumber(digits.value, factor[0], factor[1])
  if (value < 0) return failed(say.negative(shown), scanned.start, scanned.end - scanned.start)
  if (value > info.most) return failed(say.beyondReach(shown, info.mostText), scanned.start, scanned.end - scanned.start)
  if (info.least !== undefined && value > 0 && value < info.least)
    return failed(say.belowReach(shown, `${info.least.toFixed(6)} ${info.proposals.at(-1)}`), scanned.start, scanned.end - scanned.start)
  return { value, fault: null }
}

function nearUnit(written: string, info: UnitTable): string | null {
  const alias = ALIASES[written.toLowerCase()] ?? Object.keys(info.units).find((unit) => unit.toLowerCase() === written.toLowerCase())
  return alias !== undefined && Object.hasOwn(info.units, alias) ? alias : nearest(written, Object.keys(info.units))
}

/** `1:02` and `1:02:30` are no durations: nobody can tell which parts are meant. Null where the text has no such form. */
export function clockTime(text: string): { value: null; fault: Fault } | null {
  const match = /^\s*(\d{1,6}):([0-5]\d)(?::([0-5]\d))?$/.exec(text)
  if (match === null) return null
  const [, first = '', second = '', third] = match
  const parts = Number(first) * 60 + Number(second)
  const sentence =
    third === undefined
      ? say.clockTime(text.trim(), `${parts} s`, `${parts} min`)
      : say.clockTime(text.trim(), `${parts * 60 + Number(third)} s`, '')
  return failed(sentence, 0, text.length)
}

/**
 * A whole text as one quantity.
 *
 * @param text       such as `15 m/min`
 * @param dimension  of scenarios, or a table of units
 * @returns          the value in seconds, metres, metres per second, metres per second squared or the base unit of the table, ≥ 0; or what is wrong, with its column
 * @example parseQuantity('15 m/min', 'speed').value // => 0.25
 * @example parseQuantity('78.125 mm', 'length').value // => 0.078125
 */
export function parseQuantity(text: string, dimension: Dimension | UnitTable): Outcome<number> {
  const trimmed = text.trimEnd()
  const clock = dimension === 'duration' ? clockTime(trimmed) : null
  if (clock !== null) return clock
  const scanned = scan(trimmed, 0)
  if (scanned === null) return failed(say.notAQuantity(text, tableOf(dimension).name), 0, trimmed.length)
  const thousands = /^[+-]?\d{1,3}(?:[  ']\d{3})+(?!\d)/.exec(trimmed.slice(scanned.start))
  if (thousands !== null) {
    const rest = trimmed.slice(scanned.start + thousands[0].length).trim()
    return failed(say.blankInNumber(trimmed, `${thousands[0].replace(/\D/g, '')} ${rest}`.trim()), scanned.start, thousands[0].length)
  }
  const outcome = inBaseUnit(scanned, trimmed, dimension)
  if (outcome.fault !== null) return outcome
  if (scanned.end < trimmed.length)
    return failed(say.leftover(trimmed.slice(scanned.end).trim()), scanned.end, trimmed.length - scanned.end)
  return outcome
}

/**
 * A percentage as an exact share.
 *
 * @example parsePercent('1.5 %').value?.scale // => 3
 */
export function parsePercent(text: string): Outcome<Decimal> {
  const trimmed = text.trimEnd()
  const scanned = scan(trimmed, 0)
  if (scanned === null || scanned.end < trimmed.length) return failed(say.shareNumber(text), 0, trimmed.length)
  const digits = digitsOf(scanned, trimmed)
  if (digits.fault !== null) return digits
  if (scanned.unit !== '%') return failed(say.shareNumber(text), 0, trimmed.length)
  if (digits.value.digits < 0n) return failed(say.negative(trimmed), scanned.start, trimmed.length)
  return { value: { digits: digits.value.digits, scale: digits.value.scale + 2 }, fault: null }
}
