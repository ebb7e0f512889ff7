/**
 * One run as a row of numbers: all that a study keeps of it. A row is small, travels between threads without copying, and rows add up column by column.
 * NaN stands for "there is none" (a lap time in a run without a whole lap); it never leaves this package.
 */
import { windowSecondsOf } from '@loopwright/line/bounds'
import {
  CARRIER_STATES,
  type LineSpec,
  type RunResult,
  STATION_STATES,
  type StationState,
  stopSources,
  stopsOf,
  ZONE_STATES,
} from '@loopwright/line'

/** How a run ended, as a number in its row. */
export const END_REASONS = ['end of window', 'gridlock', 'out of products'] as const

/** Where each number stands. */
export interface RowLayout {
  readonly units: number
  /** place in END_REASONS */
  readonly end: number
  readonly events: number
  readonly outputPerHour: number
  readonly lapSeconds: number
  readonly timeInLineSeconds: number
  readonly productsInLine: number
  /** first of `hours` columns */
  readonly outputByHour: number
  readonly hours: number
  /** first column of the first station: its states, its longest block, its stops by cause */
  readonly station: number
  readonly stationStride: number
  /** first column of the first zone: its states, its occupancy */
  readonly zone: number
  readonly zoneStride: number
  /** first column of the first cause: seconds, count */
  readonly cause: number
  /** names of what stops parts of the line (`stopSources`), then `break` where there are breaks */
  readonly causes: readonly string[]
  /** first of the carriers' states: seconds summed over carriers */
  readonly carrierStates: number
  readonly length: number
}

/** The layout of all runs of one line, whatever its number of carriers. */
export function rowLayout(spec: LineSpec): RowLayout {
  const causes = [...stopSources(spec).map(({ name }) => name), ...(spec.breaks.length > 0 ? ['break'] : [])]
  const hours = Math.ceil(windowSecondsOf(spec) / 3600)
  const stationStride = STATION_STATES.length + 1 + causes.length
  const zoneStride = ZONE_STATES.length + 1
  const outputByHour = 7
  const station = outputByHour + hours
  const zone = station + spec.stations.length * stationStride
  const cause = zone + spec.zones.length * zoneStride
  const carrierStates = cause + 2 * causes.length
  return {
    units: 0,
    end: 1,
    events: 2,
    outputPerHour: 3,
    lapSeconds: 4,
    timeInLineSeconds: 5,
    productsInLine: 6,
    outputByHour,
    hours,
    station,
    stationStride,
    zone,
    zoneStride,
    cause,
    causes,
    carrierStates,
    length: carrierStates + CARRIER_STATES.length,
  }
}

/** The column of a station's time in a state. */
export const stationColumn = (layout: RowLayout, station: number, state: StationState): number =>
  layout.station + station * layout.stationStride + STATION_STATES.indexOf(state)

/** Room for the rows of some runs, one after the other in one piece of memory, which goes from thread to thread as a whole. */
export function rowRoom({ length }: RowLayout, runs: number): Float64Array[] {
  const room = new Float64Array(runs * length)
  return Array.from({ length: runs }, (_, run) => room.subarray(run * length, (run + 1) * length))
}

/**
 * Writes a run into a row.
 *
 * @param row  zeros; default: one of its own
 */
export function runRow(layout: RowLayout, result: RunResult, row: Float64Array = new Float64Array(layout.length)): Float64Array {
  row[layout.units] = result.output
  row[layout.end] = END_REASONS.indexOf(result.end.reason)
  row[layout.events] = result.events
  row[layout.outputPerHour] = result.outputPerHour
  row[layout.lapSeconds] = result.lap.mean ?? Number.NaN
  row[layout.timeInLineSeconds] = result.timeInLine.mean ?? Number.NaN
  row[layout.productsInLine] = result.productsInLineMean
  row.set(result.outputByHour, layout.outputByHour)
  result.stations.forEach((station, index) => {
    const at = layout.station + index * layout.stationStride
    put(row, at, STATION_STATES, station.seconds)
    row[at + STATION_STATES.length] = station.longestBlockSeconds
    for (const { cause, seconds } of station.stoppedBy) {
      const column = layout.causes.indexOf(cause)
      if (column < 0) throw new Error(`the run tells of a stop called ${cause}, which its line does not have`)
      row[at + STATION_STATES.length + 1 + column]! += seconds
    }
  })
  result.zones.forEach((zone, index) => {
    const at = layout.zone + index * layout.zoneStride
    put(row, at, ZONE_STATES, zone.seconds)
    row[at + ZONE_STATES.length] = zone.occupancyMean
  })
  const stops = stopsOf(result)
  layout.causes.forEach((_, index) => {
    row[layout.cause + 2 * index] = stops[index]!.seconds
    row[layout.cause + 2 * index + 1] = stops[index]!.count
  })
  for (const carrier of result.carriers) {
    put(row, layout.carrierStates, CARRIER_STATES, carrier.seconds)
  }
  return row
}

/** Adds seconds by state to the columns from `at` on, in the order of the states. */
function put<S extends string>(row: Float64Array, at: number, states: readonly S[], seconds: Readonly<Record<S, number>>): void {
  for (let k = 0; k < states.length; k++) row[at + k]! += seconds[states[k]!]
}
