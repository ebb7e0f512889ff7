/** Throughput against carriers: mean, its interval, spread of the windows, plan, and the three limits of the law. */
import type { SweepResult } from '@loopwright/study'
import type { Figure, WindowWords } from './figure.ts'

export interface ThroughputOptions extends WindowWords {}

export function throughput(_sweep: SweepResult, _options: ThroughputOptions): Figure {
  throw new Error('under construction')
}
