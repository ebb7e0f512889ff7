/** Time stopped in one window, by cause. */
import type { SweepCount } from '@loopwright/study'
import type { Figure, WindowWords } from './figure.ts'

export interface StoppedTimeOptions extends WindowWords {}

export function stoppedTime(_count: Pick<SweepCount, 'carriers' | 'stoppedBy'>, _options: StoppedTimeOptions): Figure {
  throw new Error('under construction')
}
