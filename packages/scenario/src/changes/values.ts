/** Values of a file as they stand in it, by the paths of variations: what somebody changes from. */
import { type Located, plain } from '../text/located.ts'
import { createReport } from '../problems/report.ts'
import { readSource } from '../text/source.ts'
import { stepInto } from './graft.ts'
import { parsePath } from './variations.ts'

/** A text is read as it would be in the file: `12 m/min`, `15`, `[Z01, Z05]`, `{ kind: gamma, … }`. */
export type ChangeValue = string | number | boolean | readonly ChangeValue[] | { readonly [key: string]: ChangeValue }

/** Takes a path as in a variation, such as `drive.speed`; gives null where the file does not say it, or cannot be read. */
export type FileValues = (path: string) => ChangeValue | null

/**
 * The values of a file by path, as plain data: texts as they are written. The file is read once, for all that is asked of it.
 *
 * @example fileValues('drive: { speed: 15 m/min }')('drive.speed') // => '15 m/min'
 */
export function fileValues(text: string): FileValues {
  return valuesOf(readSource(text, createReport(text)))
}

/** The same of a file that is read already; null: it cannot be read. */
export function valuesOf(root: Located | null): FileValues {
  return (path) => {
    const steps = parsePath(path)
    if (root === null || steps === null) return null
    let at: Located | undefined = root
    for (const step of steps) at = stepInto(at, step)
    return at === undefined || at.kind === 'null' ? null : (plain(at) as ChangeValue)
  }
}

/** a number or a range of them with a unit of time behind */
const TIMES = /(\d+(?:\.\d+)?)((?:\s*\.\.\s*\d+(?:\.\d+)?)*)(\s*)(ms|s|min|h|d)(?![A-Za-z/])/g
/** digits of a time that is worked out; more would only fill the file */
const DIGITS = 6

/**
 * A value with every time in it longer or shorter, in the form in which it stands: shares, shapes and names stay.
 *
 * @param value   a time as files write it, or keys with times
 * @param factor  > 0
 * @returns       null where there is no time in it: it stands in a table, or takes none
 * @example timesScaled('45 s ± 15 %', 0.9) // => '40.5 s ± 15 %'
 * @example timesScaled({ cv: '10 %', mean: { small: '40 s', large: 'none' } }, 1.5) // => { cv: '10 %', mean: { small: '60 s', large: 'none' } }
 */
export function timesScaled(value: ChangeValue, factor: number): ChangeValue | null {
  let found = false
  const scaled = (digits: string): string => String(Number((Number(digits) * factor).toPrecision(DIGITS)))
  const walk = (each: ChangeValue): ChangeValue => {
    if (typeof each === 'string')
      return each.replace(TIMES, (_, first: string, more: string, gap: string, unit: string) => {
        found = true
        return `${scaled(first)}${more.replace(/\d+(?:\.\d+)?/g, scaled)}${gap}${unit}`
      })
    if (Array.isArray(each)) return each.map(walk)
    if (typeof each !== 'object') return each
    return Object.fromEntries(Object.entries(each).map(([key, inner]) => [key, NO_TIME.has(key) ? inner : walk(inner)]))
  }
  const changed = walk(value)
  return found ? changed : null
}

/** keys whose texts are no times, whatever they look like */
const NO_TIME = new Set(['title', 'kind', 'file', 'column', 'where'])
