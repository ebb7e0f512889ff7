// What a chart gives

export type { CostGrowthOptions, CostPoint } from './effects/costGrowth.ts'
export { costGrowth } from './effects/costGrowth.ts'
export type { DriversOptions } from './effects/drivers.ts'
export { drivers, gainText } from './effects/drivers.ts'
export type { ChartRow, Figure, WindowWords } from './draw/figure.ts'
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
} from './table/format.ts'
export type { GridCurvesOptions } from './grid/gridCurves.ts'
export { gridCurves } from './grid/gridCurves.ts'
export type { GridNumbers } from './grid/gridParts.ts'
export { interactionWords, levelWords, settingWords, unitsText } from './grid/gridParts.ts'
export type { GridTableOptions } from './grid/gridTable.ts'
export { gridTable } from './grid/gridTable.ts'
export { hatchings } from './draw/hatching.ts'
export type { MapPath } from './draw/lineLayers.ts'
export { lineMap } from './times/lineMap.ts'
export type { LossesOptions } from './effects/losses.ts'
export { losses } from './effects/losses.ts'
export type { OutputByHourOptions, Pause } from './throughput/outputByHour.ts'
export { breaksWithin, outputByHour } from './throughput/outputByHour.ts'
// The plan of the loop
export type { LoopPlan, PlanOptions } from './plan/plan.ts'
export type { PlanZone } from './plan/planZone.ts'
export { loopPlan } from './plan/plan.ts'
// How far a study has come
export type { RunsDone } from './table/progressWords.ts'
export { progressWords } from './table/progressWords.ts'
export type { StationTimesOptions } from './times/stationTimes.ts'
export { statesIn, stationTimes } from './times/stationTimes.ts'
export type { StopCause, StoppedTimeOptions } from './times/stoppedTime.ts'
export { stoppedTime } from './times/stoppedTime.ts'
export type { ColumnOf, FieldOf, Table, TableColumn, TableField, TableParts, TableRow, TableValue } from './table/table.ts'
export { dataColumn, tableOf, wordColumn } from './table/table.ts'
export { fieldName, meanFields } from './table/tableFields.ts'
// Text for a terminal
export type { TextStyle } from './draw/textStyle.ts'
export { styledText, visibleStyled } from './draw/textStyle.ts'
// The look
export type { Look } from './draw/theme.ts'
export { themeCss, vegaConfig } from './draw/theme.ts'
// Charts
export type { ThroughputOptions } from './throughput/throughput.ts'
export { throughput } from './throughput/throughput.ts'
export type { TimelineOptions } from './times/timeline.ts'
export { timeline } from './times/timeline.ts'
export type { UnitsSpreadOptions } from './throughput/unitsSpread.ts'
export { unitsSpread } from './throughput/unitsSpread.ts'
export { visibleLine, visibleText } from './draw/visibleText.ts'
export type { WaitingZone } from './times/waitingCircle.ts'
export { waitingCircle } from './times/waitingCircle.ts'
export type { ZoneOccupancyOptions, ZonePlace } from './times/zoneOccupancy.ts'
export { zoneOccupancy } from './times/zoneOccupancy.ts'
