// Measured times, in their order, by size, and by how many fall where
export { timesSpread } from './timesSpread.ts'
export type { MeasuredTimes } from './timesSpread.ts'
export { quantilePlot } from './quantilePlot.ts'
export type { QuantileTimes } from './quantilePlot.ts'
export { runChart } from './runChart.ts'
export type { RunTimes, RunTime } from './runChart.ts'
