/** Output in each hour of the window, beside the pace that the plan asks for. */
import type { SweepCount } from '@loopwright/study'
import type { Figure, WindowWords } from './figure.ts'

export interface OutputByHourOptions extends WindowWords {
  /** breaks within the window, seconds from its start; default: none */
  readonly breaks?: readonly { readonly startSeconds: number; readonly lengthSeconds: number }[]
  /** clock time of the window's start, "14:20"; default: hours are counted from 1 */
  readonly startClock?: string
}

export function outputByHour(_count: Pick<SweepCount, 'carriers' | 'outputByHour'>, _options: OutputByHourOptions): Figure {
  throw new Error('under construction')
}
