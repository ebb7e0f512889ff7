// The clock
export { TICKS_PER_SECOND, isOnGrid, toGrid, toGridAt } from './grid.ts'

// Timers
export { TimerQueue } from './queue.ts'

// Telling runs apart
export { RunningHash } from './hash.ts'

// Assertions
export { assert, AssertionError } from './assert.ts'
