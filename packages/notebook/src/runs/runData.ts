/** A single run in full, as tables for files: seconds, counts, names. */
import { dataColumn, fieldName, type FieldOf, tableOf } from '@loopwright/charts/table'
import {
  CARRIER_STATES,
  type CarrierResult,
  type CarrierState,
  type RunResult,
  STATION_STATES,
  type StationResult,
  type StationState,
  stopsOf,
  ZONE_STATES,
  type ZoneResult,
  type ZoneState,
} from '@loopwright/line'
import type { DataCell } from '../cells/cell.ts'

export function runData(run: RunResult): DataCell[] {
  const states = <S extends string, R extends { readonly seconds: Readonly<Record<S, number>> }>(names: readonly S[]): FieldOf<R>[] =>
    names.map((state) => [`${fieldName(state)}_s`, `seconds in the state "${state}"`, ({ seconds }) => seconds[state]])
  const stops = stopsOf(run)
  return [
    data('outputs', 'Units taken off', run.outputSeconds, [
      ['unit', 'number of the unit within the window, from 1', (_, index) => index + 1],
      ['seconds', 'instant, seconds from the start of the run', (seconds) => seconds],
    ]),
    data('output_hours', 'Output by hour', run.outputByHour, [
      ['hour', 'hour of the window, from 1', (_, index) => index + 1],
      ['units', 'units made in it', (units) => units],
    ]),
    data('station_seconds', 'Stations', run.stations, [
      ['station', 'name in the scenario', ({ name }) => name],
      ...states<StationState, StationResult>(STATION_STATES),
      ['longest_block_s', 'longest time without a break that it was blocked, seconds', ({ longestBlockSeconds }) => longestBlockSeconds],
      ['cycles', 'carriers let go', ({ cycles }) => cycles],
    ]),
    data('zone_seconds', 'Zones', run.zones, [
      ['zone', 'name of the zone', ({ name }) => name],
      ['occupancy_mean', 'mean number of carriers in it, 0 … 1', ({ occupancyMean }) => occupancyMean],
      ['moves_out', 'moves out of it', ({ movesOut }) => movesOut],
      ...states<ZoneState, ZoneResult>(ZONE_STATES),
    ]),
    data('carrier_seconds', 'Carriers', run.carriers, [
      ['carrier', 'number of the carrier, from 0', (_, index) => index],
      ['laps', 'laps that ended in the window', ({ laps }) => laps],
      ...states<CarrierState, CarrierResult>(CARRIER_STATES),
    ]),
    data('stop_seconds', 'Stops', run.breaks.count > 0 ? stops : stops.slice(0, -1), [
      ['cause', 'what stopped something', ({ name }) => name],
      ['stops', 'how often in the window', ({ count }) => count],
      ['seconds', 'seconds stopped in the window', ({ seconds }) => seconds],
    ]),
  ]
}

function data<R>(id: string, caption: string, rows: readonly R[], fields: readonly FieldOf<R>[]): DataCell {
  return { kind: 'data', id, table: tableOf<R>({ caption, columns: fields.map((field) => dataColumn(...field)), rows }) }
}
