/** Counts of a whole run, which `RunResult` has of its window alone. (MODEL.md §11) */
import type { Line } from '../state/line.ts'

/** Counts from time 0 to the end of the window, the warm-up and what happens at instant 0 itself included. */
export interface RunTotals {
  /** moves begun, those out of the store too */
  readonly moves: number
  /** products loaded */
  readonly loads: number
  /** good products taken off */
  readonly output: number
  /** products that arrived at supplies, those turned away too; 0 where they are always there */
  readonly arrivals: number
}

/** Of the run that the line has behind it. */
export function totalsOf({ collector, goods }: Line): RunTotals {
  return {
    moves: collector.movesBefore + collector.movesFromStore + collector.movesOut.reduce((sum, count) => sum + count, 0),
    loads: collector.loadsBefore + collector.loads,
    output: collector.outputBefore + collector.outputs.length,
    arrivals: goods.supplies.reduce((sum, supply) => sum + supply.arrived, 0),
  }
}
