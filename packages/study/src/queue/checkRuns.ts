/**
 * Numbers by which two machines are shown to agree to the last bit: what their processor and their Node make of each function that the engine takes from them, and
 * runs of a line in which every kind of time is drawn.
 */
import { createHash } from 'node:crypto'
import { createSimulator, type LineSpec, loopLine } from '@loopwright/line'
import { type Distribution, stream } from '@loopwright/stats'
import { rowLayout, rowRoom, runRow } from '../runs/runRow.ts'

/** Functions whose last bit a processor or a Node may decide; all else that the engine asks of `Math` is exact by the standard of the language. */
export const INEXACT = ['atan', 'cbrt', 'exp', 'expm1', 'log', 'log10', 'log1p', 'sin', 'sqrt', 'tan'] as const
export type Functions = Readonly<Record<(typeof INEXACT)[number] | 'pow', (x: number, y: number) => number>>

/** values of each function: where two differ at all, they do at some of a hundred */
const POINTS = 2000
const RUNS = 12

const TIMES: readonly Distribution[] = [
  { kind: 'uniform', min: 8, max: 14 },
  { kind: 'triangular', min: 8, mode: 10, max: 15 },
  { kind: 'lognormal', mean: 11, cv: 0.3 },
  { kind: 'gamma', mean: 11, cv: 0.4 },
  { kind: 'weibull', shape: 2.5, scale: 12 },
  { kind: 'pert', min: 8, mode: 10, max: 16 },
  { kind: 'empirical', values: [8, 9.5, 11, 14], interpolate: true },
  { kind: 'occasional', base: 10, probability: 0.1, of: { kind: 'exponential', mean: 12 } },
]

/**
 * The digest of these numbers.
 *
 * @param functions  default: those of this machine
 * @returns          8 hexadecimal digits
 * @example checkDigest().length // => 8
 */
export function checkDigest(functions: Functions = Math): string {
  const hash = createHash('sha256').update(new Uint8Array(valuesOf(functions).buffer))
  for (const row of rowsOf(checkLine())) hash.update(new Uint8Array(row.buffer, row.byteOffset, row.byteLength))
  return hash.digest('hex').slice(0, 8)
}

function valuesOf(functions: Functions): Float64Array {
  const names = [...INEXACT, 'pow'] as const
  const values = new Float64Array(names.length * POINTS)
  for (const [index, name] of names.entries()) {
    const next = stream('check', 0, name)
    const of = functions[name]
    // from 2⁻²⁰ to 2⁹, where all of them are finite
    for (let point = 0; point < POINTS; point += 1) values[index * POINTS + point] = of(2 ** (30 * next() - 20) % 700, 3 * next())
  }
  return values
}

function rowsOf(line: LineSpec): Float64Array[] {
  const layout = rowLayout(line)
  const simulator = createSimulator(line)
  const rows = rowRoom(layout, RUNS)
  for (const [replication, row] of rows.entries()) {
    runRow(layout, simulator.run({ seed: 'check', replication }), row)
    // "there is none" has many bit patterns
    row.forEach((value, column) => {
      if (Number.isNaN(value)) row[column] = -1
    })
  }
  return rows
}

function checkLine(): LineSpec {
  const zones = 2 * TIMES.length + 4
  const stations = Object.fromEntries(TIMES.map((time, index) => [`W${index}`, { zone: 2 * index + 2, work: { [`task ${index}`]: time } }]))
  return loopLine({
    zones,
    zoneLength: 1,
    carriers: { count: Math.floor(zones / 2), length: 0.8, width: 0.8 },
    drive: { speed: 0.2, acceleration: 0.5, reaction: 0.1 },
    stations: { A: { zone: 0, load: 7 }, ...stations, Z: { zone: zones - 1, unload: 6 } },
    stops: { jam: { at: 'W3', after: { kind: 'weibull', shape: 1.4, scale: 900 }, lasts: { kind: 'lognormal', mean: 60, cv: 0.8 } } },
    warmup: 600,
    end: 3600,
  }).spec
}
