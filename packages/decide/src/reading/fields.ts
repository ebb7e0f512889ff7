/** Readers of a located tree: each gives a value, or reports what is wrong and gives `undefined`. All problems are found at once. */
import { nearest } from '@loopwright/line/check'
import { describe, type Entry, joinPath, type Located, type Report } from '@loopwright/scenario/text'
import * as say from './messages.ts'

/** What readers share while a file is read. */
export interface Reading {
  readonly report: Report
  /** of the first amount of money met; '' before */
  currency: string
}

/** Gives the value at a place; undefined: it is reported. */
export type Reader<T> = (at: Located, reading: Reading) => T | undefined

/** A key of a group: how it is read, and what stands in where it is missing. */
export interface Field<T> {
  readonly read: Reader<T>
  /** what is expected, for the sentence about a missing key; null: it may be missing */
  readonly expected: string | null
  readonly otherwise: T | undefined
}

export const required = <T>(read: Reader<T>, expected: string): Field<T> => ({ read, expected, otherwise: undefined })
export const optional = <T>(read: Reader<T>, otherwise: T): Field<T> => ({ read, expected: null, otherwise })

type Values<S> = { [K in keyof S]: S[K] extends Field<infer T> ? T : never }

/** A set of known keys. */
export function group<S extends Readonly<Record<string, Field<unknown>>>>(fields: S): Reader<Values<S>> {
  const known = Object.keys(fields)
  return (at, reading) => {
    const { report } = reading
    if (at.kind !== 'map') return refuse(at, report, 'a set of keys with values')
    const values: Record<string, unknown> = {}
    let whole = true
    for (const { key, keyStart, keyEnd } of at.entries.values()) {
      if (known.includes(key)) continue
      report.addAt(keyStart, keyEnd - keyStart, joinPath(at.path, key), say.unknownKey(key, nearest(key, known), known))
      whole = false
    }
    for (const [key, { read, expected, otherwise }] of Object.entries(fields)) {
      const entry = at.entries.get(key)
      if (entry === undefined) {
        if (expected !== null) report.add({ ...at, path: joinPath(at.path, key) }, say.missing(key, expected))
        if (expected !== null) whole = false
        values[key] = otherwise
        continue
      }
      const value = read(entry.value, reading)
      if (value === undefined) whole = false
      values[key] = value
    }
    return whole ? (values as Values<S>) : undefined
  }
}

/** Values by name; the names are the user's. */
export function byName<T>(read: Reader<T>, what: string): Reader<readonly (readonly [name: string, value: T, entry: Entry])[]> {
  return (at, reading) => {
    if (at.kind !== 'map') return refuse(at, reading.report, `${what} by name`)
    let whole = true
    const values: (readonly [string, T, Entry])[] = []
    for (const entry of at.entries.values()) {
      const value = read(entry.value, reading)
      if (value === undefined) whole = false
      else values.push([entry.key, value, entry])
    }
    return whole ? values : undefined
  }
}

export const text: Reader<string> = (at, { report }) =>
  at.kind === 'text' && at.value !== '' ? String(at.value) : refuse(at, report, 'a text')

/** As it was written: a number too. */
export const scalar: Reader<string> = (at, { report }) =>
  at.kind === 'map' || at.kind === 'list' || at.kind === 'null'
    ? refuse(at, report, 'a value')
    : at.kind === 'text'
      ? String(at.value)
      : at.source

/** One of some words, each with what it means. */
export function word<T>(words: Readonly<Record<string, T>>): Reader<T> {
  const known = Object.keys(words)
  return (at, { report }) => {
    const found = at.kind === 'text' ? String(at.value) : at.source
    if (Object.hasOwn(words, found)) return words[found]
    report.add(at, say.notAChoice(found === '' ? describe(at) : found, nearest(found, known), known))
    return undefined
  }
}

export function whole(least: number, most: number = 1_000_000): Reader<number> {
  return (at, { report }) => {
    if (at.kind !== 'number') return refuse(at, report, 'a whole number')
    const value = at.value as number
    if (!Number.isInteger(value)) report.add(at, say.notWhole(at.source))
    else if (value < least) report.add(at, say.tooSmall(at.source, least))
    else if (value > most) report.add(at, say.tooBig(at.source, String(most)))
    else return value
    return undefined
  }
}

/** A bare number, such as a coefficient. */
export function number(least: number, most: number): Reader<number> {
  return (at, { report }) => {
    if (at.kind !== 'number' || !Number.isFinite(at.value)) return refuse(at, report, 'a number')
    const value = at.value as number
    if (value < least) report.add(at, say.tooSmall(at.source, least))
    else if (value > most) report.add(at, say.tooBig(at.source, String(most)))
    else return value
    return undefined
  }
}

export function refuse(at: Located, report: Report, expected: string): undefined {
  if (at.broken !== true) report.add(at, say.wrongType(expected, describe(at)))
  return undefined
}
