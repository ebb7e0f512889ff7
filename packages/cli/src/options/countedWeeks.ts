/** Tables of what was counted after the start: weeks, measured stations, stops. */
import type { CountedStop, MeasuredStation, MeasuredWait, RealWeek } from '@loopwright/decide/acceptance'
import { readCsv } from '@loopwright/scenario'
import { Misuse } from '../shell/shell.ts'

/**
 * Weeks of a table with the columns week, units, shifts.
 *
 * @throws Misuse  with file, line, what was found and what would be right, of all rows at once
 * @example weeksOfCsv('week,units,shifts\nW1,3300,10\n', 'weeks.csv') // => [{ name: 'W1', units: 3300, shifts: 10 }]
 */
export function weeksOfCsv(text: string, file: string): RealWeek[] {
  return rowsOf(text, file, ['week', 'units', 'shifts'], [], ({ words, whole }) => {
    const units = whole('units', 0)
    const shifts = whole('shifts', 1)
    return { name: words('week'), units, shifts }
  })
}

/**
 * Stations of a table with the columns station, seconds, n, sd.
 *
 * @throws Misuse  as `weeksOfCsv`
 * @example stationsOfCsv('station;seconds;n;sd\nS6;66,5;30;3\n', 'stations.csv') // => [{ station: 'S6', seconds: 66.5, n: 30, sd: 3 }]
 */
export function stationsOfCsv(text: string, file: string, names: readonly string[] | null = null): MeasuredStation[] {
  return rowsOf(text, file, ['station', 'seconds', 'n', 'sd'], [], ({ words, number, whole }) => {
    const seconds = number('seconds', true)
    const n = whole('n', 1)
    return { station: words('station', names), seconds, n, sd: number('sd') }
  })
}

/**
 * How long stations waited, of a table that may have the columns blocked and starved, in per cent of the shift; an empty cell was not measured.
 *
 * @throws Misuse  as `weeksOfCsv`
 * @example waitsOfCsv('station,seconds,n,sd,blocked\nS6,66.5,30,3,12 %\n', 'stations.csv') // => [{ station: 'S6', state: 'blocked', share: 0.12 }]
 */
export function waitsOfCsv(text: string, file: string, names: readonly string[] | null = null): MeasuredWait[] {
  const rows = rowsOf(text, file, ['station'], [] as MeasuredWait[][], ({ words, percent }) =>
    (['blocked', 'starved'] as const).flatMap((state) => {
      const share = percent(state)
      return share === null ? [] : [{ station: words('station', names), state, share }]
    }),
  )
  return rows.flat()
}

/**
 * Stops of a table with the columns stop, count, minutes, shifts.
 *
 * @throws Misuse  as `weeksOfCsv`
 * @example stopsOfCsv('stop,count,minutes,shifts\njam,40,120.5,28\n', 'stops.csv') // => [{ stop: 'jam', count: 40, minutes: 120.5, shifts: 28 }]
 */
export function stopsOfCsv(text: string, file: string, names: readonly string[] | null = null): CountedStop[] {
  return rowsOf(text, file, ['stop', 'count', 'minutes', 'shifts'], [], ({ words, number, whole }) => {
    const count = whole('count', 0)
    const minutes = number('minutes')
    return { stop: words('stop', names), count, minutes, shifts: whole('shifts', 1) }
  })
}

interface Row {
  /** names: those there are; null: any */
  readonly words: (column: string, names?: readonly string[] | null) => string
  readonly number: (column: string, aboveZero?: boolean) => number
  readonly whole: (column: string, least: number) => number
  /** a share, 0 … 1; null: no such column, or an empty cell */
  readonly percent: (column: string) => number | null
}

function rowsOf<T>(text: string, file: string, needed: readonly string[], found: T[], read: (row: Row) => T): T[] {
  const { columns, rows, decimalComma } = readCsv(text)
  const names = columns.map((name) => name.trim().toLowerCase())
  const lacking = needed.filter((name) => !names.includes(name))
  if (lacking.length > 0)
    throw new Misuse(
      `${file}:1: there is no column ${lacking.map((name) => `"${name}"`).join(', ')}; the columns are ${needed.join(', ')}, and ${
        columns.every((name) => name.trim() === '')
          ? 'the first line names none'
          : `were ${columns
              .slice(0, 20)
              .map((name) => `"${name.slice(0, 40)}"`)
              .join(', ')}`
      }`,
    )
  const problems: string[] = []
  for (const { cells, line } of rows) {
    const cell = (column: string): string => (cells[names.indexOf(column)] ?? '').trim()
    const wrong = (column: string, wanted: string): number => {
      problems.push(`${file}:${line}: ${column} is "${cell(column).slice(0, 40)}"; write ${wanted}`)
      return 1
    }
    const number = (column: string, aboveZero = false): number => {
      const plain = decimalComma ? cell(column).replace(',', '.') : cell(column)
      const value = /^\d{1,12}(\.\d{1,12})?$/.test(plain) ? Number(plain) : -1
      return value > 0 || (value === 0 && !aboveZero) ? value : wrong(column, aboveZero ? 'a number above 0' : 'a number from 0 on')
    }
    const whole = (column: string, least: number): number => {
      const value = /^\d{1,9}$/.test(cell(column)) ? Number(cell(column)) : -1
      return value >= least ? value : wrong(column, `a whole number from ${least} on`)
    }
    const words = (column: string, known: readonly string[] | null = null): string => {
      if (cell(column) === '') wrong(column, 'a name')
      else if (known !== null && !known.includes(cell(column)))
        wrong(
          column,
          known.length === 0 ? `nothing: the scenario has no ${column}` : `one of ${known.map((name) => `"${name}"`).join(', ')}`,
        )
      return cell(column)
    }
    const percent = (column: string): number | null => {
      if (cell(column) === '') return null
      const plain = (decimalComma ? cell(column).replace(',', '.') : cell(column)).replace(/\s*%$/, '')
      const value = /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : 101
      return (value <= 100 ? value : wrong(column, 'per cent of the shift, from 0 to 100')) / 100
    }
    found.push(read({ words, number, whole, percent }))
  }
  if (problems.length > 0)
    throw new Misuse(`${problems.join('\n')}\n${problems.length} problem${problems.length === 1 ? '' : 's'} found; nothing was run.`)
  if (found.length === 0) throw new Misuse(`${file} has a heading and no rows; write one row for each`)
  return found
}
