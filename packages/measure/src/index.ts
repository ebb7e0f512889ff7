// A table of a file
export { readTable } from './table/bytes.ts'
export type { TableChoice } from './table/bytes.ts'
export type { RawTable, RawRow, Cell } from './table/rawTable.ts'
export { TableError } from './table/tableError.ts'
export type { TableFault } from './table/tableError.ts'
export { accountWords } from './table/account.ts'
export type { Account, Refusal } from './table/account.ts'

// Measured times
export { readTimes } from './times/readTimes.ts'
export type { TimeOptions } from './times/readTimes.ts'
export type { Observation, TimeTable, TimeColumn } from './times/observation.ts'
export { timeStudy, everyNth } from './times/timeStudy.ts'
export { byTask } from './times/byTask.ts'
export type { TaskTimes, TimeStudyRequest, Outliers } from './times/timeStudy.ts'
export type { Allowance } from './times/allowance.ts'
export { cyclesFor } from './times/cycles.ts'
export type { Cycles } from './times/cycles.ts'
export { onlyRises, fencesOf } from './times/checks.ts'
export type { Trend, PeopleDiffer, Rounding } from './times/checks.ts'
export { timeParts, timePartsText, partsText } from './times/timeParts.ts'
export type { TimePart, TimeSource } from './times/timeParts.ts'

// Instants
export { instantText, instantOfText } from './values/instant.ts'

// A stop log
export { readStops } from './stops/readStops.ts'
export type { Stop, StopLog, StopLogOptions } from './stops/readStops.ts'
export { workingHours } from './stops/workingHours.ts'
export type { WorkingHours } from './stops/workingHours.ts'
export { stopStudy } from './stops/stopStudy.ts'
export type { StopStudy, StopStudyRequest, StopTimes, PlaceTime } from './stops/stopStudy.ts'
export type { UsualStop } from './stops/usualStop.ts'
export { stopParts } from './stops/stopParts.ts'
export type { StopPart } from './stops/stopParts.ts'

// Orders
export { readOrders } from './mix/readOrders.ts'
export type { Order, OrderTable, OrderOptions } from './mix/readOrders.ts'
export { mixStudy } from './mix/mixStudy.ts'
export type { MixStudy, MixRequest, MixShare, OptionShare, WorstStretch } from './mix/mixStudy.ts'
export { mixPartsText } from './mix/mixParts.ts'
export type { MixPart } from './mix/mixParts.ts'

// A scenario of data
export { assemble } from './assemble/assemble.ts'
export type { Assembly, MeasuredData } from './assemble/assemble.ts'

// What the data do not know
export { redrawTimes, redrawStops, redrawMix } from './assemble/redraw.ts'
export type { DoubtedInput, Redrawn } from './assemble/redraw.ts'
