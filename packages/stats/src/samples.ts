import { notALevel, notANumber, tooFew } from './messages.ts'

/** Refuses a sample with fewer than `least` values, or with one that is not a finite number. */
export function needSample(what: string, values: readonly number[], unit: string, least: number): void {
  if (values.length < least) throw tooFew(what, values.length, unit, least)
  const row = values.findIndex((value) => !Number.isFinite(value))
  if (row >= 0) throw notANumber(`The list for ${what}`, values[row], row + 1)
}

export function needLevel(level: number): void {
  if (!(level > 0 && level < 1)) throw notALevel(level)
}

/** Ascending; as doubles, which sorts long lists without a comparison in JavaScript. */
export const sorted = (values: readonly number[]): number[] => Array.from(Float64Array.from(values).sort())
