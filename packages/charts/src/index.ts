// What a chart gives

export type { DriversOptions } from './drivers.ts'
export { drivers } from './drivers.ts'
export type { ChartRow, Figure, WindowWords } from './figure.ts'
// Numbers
export { decimalsFor, formatDuration, formatMinutes, formatNumber, formatShare, formatWithHalfWidth, percent } from './format.ts'
export { hatchings } from './hatching.ts'
export type { LossesOptions } from './losses.ts'
export { losses } from './losses.ts'
export type { OutputByHourOptions, Pause } from './outputByHour.ts'
export { breaksWithin, outputByHour } from './outputByHour.ts'
// The plan of the loop
export type { LoopPlan, PlanOptions, PlanZone } from './plan.ts'
export { loopPlan } from './plan.ts'
export type { StationTimesOptions } from './stationTimes.ts'
export { statesIn, stationTimes } from './stationTimes.ts'
export type { StoppedTimeOptions } from './stoppedTime.ts'
export { stoppedTime } from './stoppedTime.ts'
export type { Table, TableColumn, TableRow } from './table.ts'
// The look
export type { Look } from './theme.ts'
export { themeCss, vegaConfig } from './theme.ts'
// Charts
export type { ThroughputOptions } from './throughput.ts'
export { throughput } from './throughput.ts'
export type { TimelineOptions } from './timeline.ts'
export { timeline } from './timeline.ts'
export type { UnitsSpreadOptions } from './unitsSpread.ts'
export { unitsSpread } from './unitsSpread.ts'
export type { WaitingZone } from './waitingCircle.ts'
export { waitingCircle } from './waitingCircle.ts'
export type { ZoneOccupancyOptions, ZonePlace } from './zoneOccupancy.ts'
export { zoneOccupancy } from './zoneOccupancy.ts'
