// What a chart gives

export type { CostGrowthOptions, CostPoint } from './costGrowth.ts'
export { costGrowth } from './costGrowth.ts'
export type { DriversOptions } from './drivers.ts'
export { drivers, gainText } from './drivers.ts'
export type { ChartRow, Figure, WindowWords } from './figure.ts'
// Numbers
export {
  capital,
  decimalsFor,
  differenceDecimals,
  formatDuration,
  formatMinutes,
  formatNumber,
  formatShare,
  formatStretch,
  formatWithHalfWidth,
  percent,
} from './format.ts'
export type { GridCurvesOptions } from './gridCurves.ts'
export { gridCurves } from './gridCurves.ts'
export type { GridNumbers } from './gridParts.ts'
export { interactionWords, levelWords, settingWords, unitsText } from './gridParts.ts'
export type { GridTableOptions } from './gridTable.ts'
export { gridTable } from './gridTable.ts'
export { hatchings } from './hatching.ts'
export type { MapPath } from './lineLayers.ts'
export { lineMap } from './lineMap.ts'
export type { LossesOptions } from './losses.ts'
export { losses } from './losses.ts'
export type { OutputByHourOptions, Pause } from './outputByHour.ts'
export { breaksWithin, outputByHour } from './outputByHour.ts'
// The plan of the loop
export type { LoopPlan, PlanOptions, PlanZone } from './plan.ts'
export { loopPlan } from './plan.ts'
// How far a study has come
export type { RunsDone } from './progressWords.ts'
export { progressWords } from './progressWords.ts'
export type { StationTimesOptions } from './stationTimes.ts'
export { statesIn, stationTimes } from './stationTimes.ts'
export type { StopCause, StoppedTimeOptions } from './stoppedTime.ts'
export { stoppedTime } from './stoppedTime.ts'
export type { ColumnOf, FieldOf, Table, TableColumn, TableField, TableParts, TableRow, TableValue } from './table.ts'
export { dataColumn, tableOf, wordColumn } from './table.ts'
export { fieldName, meanFields } from './tableFields.ts'
// Text for a terminal
export type { TextStyle } from './textStyle.ts'
export { styledText, visibleStyled } from './textStyle.ts'
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
export { visibleLine, visibleText } from './visibleText.ts'
export type { WaitingZone } from './waitingCircle.ts'
export { waitingCircle } from './waitingCircle.ts'
export type { ZoneOccupancyOptions, ZonePlace } from './zoneOccupancy.ts'
export { zoneOccupancy } from './zoneOccupancy.ts'
