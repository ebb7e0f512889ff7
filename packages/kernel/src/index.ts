// The clock

// Assertions
export { AssertionError, assert } from './assert.ts'
export { isOnGrid, TICKS_PER_SECOND, toGrid, toGridAt } from './grid.ts'
// Telling runs apart, and what came before a failure
export { RunningHash } from './hash.ts'
// Timers
export { TimerQueue } from './queue.ts'
