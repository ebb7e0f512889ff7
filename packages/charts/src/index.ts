// What a chart gives
export type { Figure, WindowWords } from './draw/figure.ts'
export type { Drawing } from './drawing/drawing.ts'

// Output
export { throughput } from './throughput/throughput.ts'
export type { ThroughputOptions } from './throughput/throughput.ts'
export type { ThroughputGhost } from './throughput/throughputGhost.ts'
export { unitsSpread } from './throughput/unitsSpread.ts'
export type { UnitsSpreadOptions } from './throughput/unitsSpread.ts'
export { breaksWithin, outputByHour } from './throughput/outputByHour.ts'
export type { HourlyCount, OutputByHourOptions, Pause } from './throughput/outputByHour.ts'

// Times and places
export { stationTimes, statesIn } from './times/stationTimes.ts'
export type { StationTimesOptions } from './times/stationTimes.ts'
export { stoppedTime } from './times/stoppedTime.ts'
export type { StoppedTimeOptions, StopCause } from './times/stoppedTime.ts'
export { zoneOccupancy } from './times/zoneOccupancy.ts'
export type { ZoneOccupancyOptions, ZonePlace } from './times/zoneOccupancy.ts'
export { stationLoads } from './times/stationLoads.ts'
export type { StationLoad } from './times/stationLoads.ts'
export { warmUp } from './times/warmUp.ts'
export type { WarmUpNumbers } from './times/warmUp.ts'
export { timeline } from './times/timeline.ts'
export type { TimelineOptions, TimelinePause } from './times/timeline.ts'
export { lineMap, mapWords } from './times/lineMap.ts'
export type { MapPath } from './draw/lineLayers.ts'
export { waitingCircle } from './times/waitingCircle.ts'
export type { WaitingZone } from './times/waitingCircle.ts'

// The plan of the loop
export { loopPlan, planWords } from './plan/plan.ts'
export type { LoopPlan, PlanOptions } from './plan/plan.ts'
export type { PlanStation, PlanZone } from './plan/planZone.ts'

// What changes the output
export { drivers, gainText } from './effects/drivers.ts'
export type { DriversOptions } from './effects/drivers.ts'
export { losses } from './effects/losses.ts'
export type { LossesOptions } from './effects/losses.ts'
export { differences } from './effects/differences.ts'
export type { DifferenceRow, DifferencesOptions } from './effects/differences.ts'
export { costGrowth } from './effects/costGrowth.ts'
export type { CostGrowthOptions, CostPoint } from './effects/costGrowth.ts'

// A grid
export { gridCurves } from './grid/gridCurves.ts'
export type { GridCurvesOptions } from './grid/gridCurves.ts'
export { gridTable } from './grid/gridTable.ts'
export type { GridTableOptions } from './grid/gridTable.ts'
export { interactionWords, levelWords, settingWords, unitsText } from './grid/gridParts.ts'
export type { GridNumbers } from './grid/gridParts.ts'
