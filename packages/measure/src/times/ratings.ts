/** Ratings of a time study: in per cent or as shares, decided for the whole column. */
import { EMPTY, type RawRow } from '../table/rawTable.ts'
import type { Read } from '../values/duration.ts'
import { numberStyle, readNumber } from '../values/numberStyle.ts'

const LEAST = 0.4
const MOST = 2

/** A column of ratings. */
export interface Ratings {
  readonly said: string
  /** 1 is standard pace; null: the row has none */
  readonly of: (row: RawRow) => Read<number> | null
}

/**
 * Ratings by row; outside 40 to 200 % they are refused.
 *
 * @param column  null: there is none
 */
export function readRatings(body: readonly RawRow[], column: number | null, separator: string | null): Ratings | null {
  if (column === null) return null
  const texts = body.map((row) => (row.cells[column] ?? EMPTY).text.replace(/\s*%$/, ''))
  const style = numberStyle(texts, separator)
  const numbers = texts.map((text) => readNumber(text, style)).filter((value): value is number => typeof value === 'number')
  const percent = numbers.filter((value) => value > 2.5).length * 2 > numbers.length
  return {
    said: percent ? 'ratings are in per cent, 100 is standard pace' : 'ratings are shares, 1 is standard pace',
    of: (row) => {
      const { text } = row.cells[column] ?? EMPTY
      if (text === '') return null
      const value = readNumber(text.replace(/\s*%$/, ''), style)
      const share = typeof value === 'number' ? (percent || text.endsWith('%') ? value / 100 : value) : null
      return share !== null && share >= LEAST && share <= MOST
        ? { ok: true, value: share }
        : { ok: false, reason: `"${text}" is no rating from ${100 * LEAST} to ${100 * MOST} %` }
    },
  }
}
