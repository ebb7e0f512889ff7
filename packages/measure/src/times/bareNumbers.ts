/** The unit of numbers that stand in a table of times without one. */
import { sampleQuantile } from '@loopwright/stats/fit'
import type { Columns } from '../table/heads.ts'
import { type Cell, EMPTY, type RawRow, type RawTable } from '../table/rawTable.ts'
import { refusal } from '../table/tableError.ts'
import { type DurationStyle, readDuration, type TimeUnit } from '../values/duration.ts'

/** bare numbers below this may be seconds or minutes */
const SECONDS_FROM = 10
/** The unit of bare numbers: of the head, else seconds where they can be nothing else, and then said. */
export function guessedUnit(
  table: RawTable,
  { heads }: Columns,
  body: readonly RawRow[],
  styles: Map<number, DurationStyle>,
  said: string[],
  doubts: string[],
): TimeUnit | null {
  const bare: number[] = []
  for (const [column, style] of styles) {
    if (style.unit !== null) continue
    for (const row of body) {
      const cell = row.cells[column] ?? EMPTY
      const without = readDuration(cell, style)
      const value = without.ok ? null : secondsOf(cell, style)
      if (value !== null && value > 0) bare.push(value)
    }
  }
  const units = new Set([...styles.values()].map(({ unit }) => unit))
  if (bare.length === 0) {
    const [unit] = [...units]
    if (unit !== null && unit !== undefined && units.size === 1) said.push(`bare numbers are ${UNIT_WORDS[unit]}`)
    else
      for (const [column, { unit: own }] of styles)
        if (own !== null) said.push(`bare numbers under "${heads[column]!.text}" are ${UNIT_WORDS[own]}`)
    return units.size === 1 ? (unit ?? null) : null
  }
  const median = sampleQuantile(bare, 0.5)
  if (median < SECONDS_FROM) {
    const names = [...styles].filter(([, { unit }]) => unit === null).map(([column]) => `"${heads[column]!.text}"`)
    throw refusal(
      table.file,
      '',
      `the numbers under ${names.slice(0, 3).join(', ')} have no unit, and by their size (half of them below ${Number(median.toPrecision(3))}) they may be seconds or minutes`,
      'say which (--unit s or --unit min)',
    )
  }
  for (const [column, style] of styles) if (style.unit === null) styles.set(column, { ...style, unit: 's' })
  doubts.push('No unit stands above the numbers: they are taken as seconds. If they are not, say so (`--unit min`).')
  return 's'
}

const UNIT_WORDS: Readonly<Record<TimeUnit, string>> = {
  ms: 'milliseconds',
  s: 'seconds',
  cmin: 'hundredths of a minute',
  min: 'minutes',
  h: 'hours',
  d: 'days',
}

/** Seconds of a cell; null: it is no time. */
export function secondsOf(cell: Cell, style: DurationStyle): number | null {
  const read = readDuration(cell, { ...style, unit: style.unit ?? 's' })
  return read.ok ? read.value : null
}
