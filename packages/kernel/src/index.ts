// The clock
export { isOnGrid, TICKS_PER_SECOND, toGrid, toGridAt } from './grid.ts'
// Timers
export { TimerQueue } from './queue.ts'
// Telling runs apart, and what came before a failure
export { RunningHash } from './hash.ts'
export { EventRing } from './ring.ts'
// Assertions
export { AssertionError, assert } from './assert.ts'
