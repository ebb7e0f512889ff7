/** Forms of values: what stands where something of another form should is told, and the rest is read without it. */
import { nearest } from '../check/nearest.ts'
import { sentences as say } from '../check/sentences.ts'
import { LineError, type Report } from './report.ts'

/** Looks at one value, and gives what can be read of it; undefined: nothing, as if it were not there. */
export type Form = (report: Report, path: string, value: unknown) => unknown

/** A form for every key of a record: the compiler asks for each, and for no other. */
type Fields<T> = Readonly<Record<keyof T, Form>>

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** What stands there, in words. */
export function foundWords(value: unknown): string {
  if (value === null || value === undefined) return 'nothing'
  if (typeof value === 'string') return `the text "${value.slice(0, 60)}"`
  if (typeof value === 'number') return `the number ${value}`
  if (typeof value === 'boolean') return `"${value}"`
  return Array.isArray(value) ? 'a list' : typeof value === 'object' ? 'a set of keys' : `a ${typeof value}`
}

/** Nothing more is said about it, nor about what would stand in it. */
export function wrong(report: Report, path: string, expected: string, value: unknown): undefined {
  report.close(path, say.wrongType(expected, foundWords(value)))
}

const is =
  (holds: (value: unknown) => boolean, expected: string): Form =>
  (report, path, value) =>
    holds(value) ? value : wrong(report, path, expected, value)

export const isText = (value: unknown): boolean => typeof value === 'string'
export const isNumber = (value: unknown): boolean => typeof value === 'number'
export const text = is(isText, 'a text')
/** Within what range is looked at where it is read. */
export const number = is(isNumber, 'a number')
export const flag = is((value) => typeof value === 'boolean', 'true or false')
export const ref = is((value) => isText(value) || isNumber(value), 'a name, or a place from 0')

export const word =
  (...known: readonly string[]): Form =>
  (report, path, value) => {
    if (typeof value !== 'string') return wrong(report, path, `one of ${known.join(', ')}`, value)
    if (known.includes(value)) return value
    report.close(path, say.notAChoice(value, nearest(value, known), known))
  }

/** What cannot be read of a list is left out. */
export const list =
  (form: Form, what = 'a list'): Form =>
  (report, path, value) =>
    Array.isArray(value)
      ? value.map((one, index) => form(report, `${path}[${index}]`, one)).filter((one) => one !== undefined)
      : wrong(report, path, what, value)

/** Parts by name. */
export const named =
  (form: Form): Form =>
  (report, path, value) =>
    isRecord(value)
      ? there(Object.entries(value).map(([name, one]) => [name, one === undefined ? one : form(report, `${path}.${name}`, one)]))
      : wrong(report, path, 'a set of keys, one for each name', value)

const there = (entries: readonly (readonly [string, unknown])[]): object =>
  Object.fromEntries(entries.filter(([, one]) => one !== undefined))

/** A key that must be: what is to stand there in words, and what stands in for it, so that the rest can be read. */
type Needed = readonly [expected: string, standIn: unknown]

/** What is undefined is as if it were not there. Of what is no record the stand-ins are left: others may name it. */
export const record = <T>(fields: Fields<T>, needed: Partial<Record<keyof T & string, Needed>> = {}, what = 'a set of keys'): Form => {
  const known = Object.keys(fields)
  return (report, path, value) => {
    const at = (key: string): string => (path === '' ? key : `${path}.${key}`)
    const given = isRecord(value) ? value : {}
    if (given !== value) wrong(report, path, what, value)
    const looked = Object.entries(given).map(([key, one]): [string, unknown] => {
      if (one === undefined) return [key, one]
      if (Object.hasOwn(fields, key)) return [key, fields[key as keyof T](report, at(key), one)]
      report.add(at(key), say.unknownKey(key, nearest(key, known), known))
      return [key, undefined]
    })
    const standIns = Object.entries<Needed>(needed as Record<string, Needed>).map(([key, [expected, standIn]]): [string, unknown] => {
      if (given[key] === undefined) report.close(at(key), say.missing(key, expected))
      return [key, standIn]
    })
    return { ...Object.fromEntries(standIns), ...there(looked) }
  }
}

export const either =
  (holds: (value: unknown) => boolean, form: Form, other: Form): Form =>
  (report, path, value) =>
    holds(value) ? form(report, path, value) : other(report, path, value)

export const fine: Form = (_, __, value) => value

/** What stands there where it cannot be read, since others may name it. */
export const orElse =
  (standIn: unknown, form: Form): Form =>
  (report, path, value) =>
    form(report, path, value) ?? standIn

/** @throws LineError  where it is no record */
export function refuseOther(path: string, value: unknown): void {
  if (!isRecord(value)) throw new LineError([{ path, ...say.wrongType('a set of keys', foundWords(value)) }])
}
