/** What a change brought: a small one of a driver, and one whole more or fewer. */
import type { MeanInterval } from '@loopwright/stats'
import type { PairedDifference } from '@loopwright/stats/worlds'
import type { WholeChange } from '../change/wholeChanges.ts'
import type { DriverKind } from './drivers.ts'

/** What one driver does: per cent of the output, units per window. */
export interface DriverEffect {
  readonly kind: DriverKind
  readonly name: string
  readonly station: number | null
  readonly lessIsBetter: boolean
  /** per cent more output for one per cent less (of what more is better of: more) */
  readonly elasticity: MeanInterval
  /** units per window that 5 % of it bring, mean */
  readonly unitsOfStep: number
}

/** What one whole more or fewer changes: units per window, in the same worlds. */
export interface WholeEffect extends Omit<WholeChange, 'line'> {
  readonly difference: PairedDifference
}
