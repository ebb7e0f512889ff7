import { TICKS_PER_SECOND } from '@loopwright/kernel'

/** Seconds; shorter times are none. (MODEL.md §1) */
export const CLOCK_STEP = 1 / TICKS_PER_SECOND
