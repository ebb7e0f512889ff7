/** Rows and results as bytes, and back. */
import type { LineSpec, RunResult } from '@loopwright/line'
import { END_REASONS, type RowLayout, rowLayout, rowRoom, runRow } from '../runs/runRow.ts'

export interface Form<T> {
  readonly name: 'rows' | 'results'
  readonly bytesOf: (items: readonly T[]) => Uint8Array
  /** null where the bytes are not `count` of them */
  readonly itemsOf: (bytes: Uint8Array, count: number) => T[] | null
}

/** Rows: numbers of 8 bytes, row by row (IEEE 754, in the order of the processor: least byte first on all that run this). */
export function rowForm(spec: LineSpec): Form<Float64Array> {
  const layout = rowLayout(spec)
  const rowBytes = layout.length * Float64Array.BYTES_PER_ELEMENT
  return {
    name: 'rows',
    bytesOf: (rows) => {
      const bytes = new Uint8Array(rows.length * rowBytes)
      for (const [index, row] of rows.entries()) bytes.set(new Uint8Array(row.buffer, row.byteOffset, rowBytes), index * rowBytes)
      return bytes
    },
    itemsOf: (bytes, count) => {
      if (bytes.length !== count * rowBytes) return null
      const rows = rowRoom(layout, count)
      if (count > 0) new Uint8Array(rows[0]!.buffer).set(bytes)
      return rows.every((row) => isRow(layout, row)) ? rows : null
    },
  }
}

/** All that a run tells, as JSON, which keeps every bit of a finite number. */
export function resultForm(spec: LineSpec): Form<RunResult> {
  const layout = rowLayout(spec)
  return {
    name: 'results',
    bytesOf: (results) => new TextEncoder().encode(JSON.stringify(results)),
    itemsOf: (bytes, count) => {
      try {
        const items: unknown = JSON.parse(new TextDecoder().decode(bytes))
        return Array.isArray(items) && items.length === count && items.every((item) => isResult(spec, layout, item)) ? items : null
      } catch {
        return null
      }
    },
  }
}

/** Whether numbers are those of some run: whole counts, a known end, no number missing but the means that a run may lack. */
function isRow(layout: RowLayout, row: Float64Array): boolean {
  const { units, end, events, lapSeconds, timeInLineSeconds } = layout
  const mayLack = (column: number): boolean => column === lapSeconds || column === timeInLineSeconds
  return (
    [units, end, events].every((column) => Number.isSafeInteger(row[column]) && row[column]! >= 0) &&
    END_REASONS[row[end]!] !== undefined &&
    row.every((value, column) => Number.isFinite(value) || (mayLack(column) && Number.isNaN(value)))
  )
}

/** lists of a result of which a row knows nothing */
const LISTS = ['outputByHour', 'outputSeconds', 'supplies', 'handlings', 'safetyStops'] as const

/** Whether something tells of a run of this line: it has the line's parts, and a row can be made of it. Throws where it cannot. */
function isResult({ stations, zones }: LineSpec, layout: RowLayout, item: RunResult): boolean {
  return (
    isRow(layout, runRow(layout, item)) &&
    item.stations.length === stations.length &&
    item.zones.length === zones.length &&
    LISTS.every((name) => Array.isArray(item[name]))
  )
}
