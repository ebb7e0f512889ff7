/** What is kept of runs as bytes, and back. */
import { type LineSpec, type RunResult, STATION_STATES, ZONE_STATES } from '@loopwright/line'
import { windowSecondsOf } from '@loopwright/line/bounds'
import { END_REASONS, type RowLayout, rowLayout, rowRoom, runRow } from '../runs/runRow.ts'
import type { Kept, Passages } from '../runs/task.ts'

export interface Form<T> {
  readonly name: Kept
  readonly bytesOf: (items: readonly T[]) => Uint8Array
  /** null where the bytes are not `count` of them */
  readonly itemsOf: (bytes: Uint8Array, count: number) => T[] | null
}

/** The form in which runs of a line are kept. */
export const formOf = (spec: LineSpec, want: Kept): Form<unknown> =>
  ({ rows: rowForm, results: resultForm, passages: () => PASSAGES })[want](spec) as Form<unknown>

/** Rows: numbers of 8 bytes, row by row (IEEE 754, in the order of the processor: least byte first on all that run this). */
export function rowForm(spec: LineSpec): Form<Float64Array> {
  const layout = rowLayout(spec)
  const windowSeconds = windowSecondsOf(spec)
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
      return rows.every((row) => isRow(windowSeconds, layout, row)) ? rows : null
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

/** Passages: numbers of 8 bytes, of each run its end, how many came, how many went, and when each of them did. */
export const PASSAGES: Form<Passages> = {
  name: 'passages',
  bytesOf: (items) => {
    const numbers = items.flatMap(({ end, loadSeconds, unloadSeconds }) => [
      END_REASONS.indexOf(end),
      loadSeconds.length,
      unloadSeconds.length,
      ...loadSeconds,
      ...unloadSeconds,
    ])
    return new Uint8Array(Float64Array.from(numbers).buffer)
  },
  itemsOf: (bytes, count) => {
    if (bytes.length % Float64Array.BYTES_PER_ELEMENT !== 0) return null
    const numbers = new Float64Array(bytes.slice().buffer)
    const items: Passages[] = []
    let at = 0
    const some = (length: number): Float64Array => {
      at += length
      return numbers.subarray(at - length, at)
    }
    for (let item = 0; item < count; item += 1) {
      const [reason, came, went] = some(3)
      const end = END_REASONS[reason!]
      if (end === undefined || !isCount(came) || !isCount(went) || at + came + went > numbers.length) return null
      const [loadSeconds, unloadSeconds] = [some(came), some(went)]
      if (!isInOrder(loadSeconds) || !isInOrder(unloadSeconds)) return null
      items.push({ end, loadSeconds, unloadSeconds })
    }
    return at === numbers.length ? items : null
  },
}

const isCount = (value: number | undefined): value is number => Number.isSafeInteger(value) && value! >= 0

/** Whether each is an instant that is not before the one before it. */
const isInOrder = (seconds: Float64Array): boolean =>
  seconds.every((value, index) => Number.isFinite(value) && value >= (seconds[index - 1] ?? 0))

/**
 * Whether numbers are those of some run: whole counts, a known end, no number missing but the means that a run may lack; and what a run makes
 * of its window: each station and zone is in some state all the time (MODEL.md §11), and the hours add up to the whole.
 */
function isRow(windowSeconds: number, layout: RowLayout, row: Float64Array): boolean {
  const { units, end, events, outputPerHour, outputByHour, hours, lapSeconds, timeInLineSeconds } = layout
  const mayLack = (column: number): boolean => column === lapSeconds || column === timeInLineSeconds
  const sum = (from: number, count: number): number => row.subarray(from, from + count).reduce((all, one) => all + one, 0)
  const isAbout = (found: number, right: number): boolean => Math.abs(found - right) <= 1e-6 * (1 + Math.abs(right))
  const isWhole = (first: number, past: number, stride: number, states: number): boolean => {
    for (let at = first; at < past; at += stride) if (!isAbout(sum(at, states), windowSeconds)) return false
    return true
  }
  return (
    [units, end, events].every((column) => isCount(row[column])) &&
    END_REASONS[row[end]!] !== undefined &&
    row.every((value, column) => (Number.isFinite(value) && value >= 0) || (mayLack(column) && Number.isNaN(value))) &&
    isAbout(sum(outputByHour, hours), row[units]!) &&
    isAbout((row[outputPerHour]! * windowSeconds) / 3600, row[units]!) &&
    isWhole(layout.station, layout.zone, layout.stationStride, STATION_STATES.length) &&
    isWhole(layout.zone, layout.cause, layout.zoneStride, ZONE_STATES.length)
  )
}

/** lists of a result of which a row knows nothing */
const LISTS = ['outputByHour', 'outputSeconds', 'supplies', 'handlings', 'safetyStops'] as const

/** Whether something tells of a run of this line: it has the line's parts, and a row can be made of it. Throws where it cannot. */
function isResult(spec: LineSpec, layout: RowLayout, item: RunResult): boolean {
  return (
    isRow(windowSecondsOf(spec), layout, runRow(layout, item)) &&
    typeof item.seed === 'string' &&
    isCount(item.replication) &&
    item.stations.length === spec.stations.length &&
    item.zones.length === spec.zones.length &&
    LISTS.every((name) => Array.isArray(item[name])) &&
    item.outputSeconds.every(Number.isFinite) &&
    [...item.supplies, ...item.handlings, ...item.safetyStops].every((one) => typeof one === 'object' && one !== null)
  )
}
