// What a study tells
export type { Law, LawTerms, Limit, LimitKind, LimitParts, LimitReason } from '@loopwright/line'
export {
  CARRIER_STATES,
  LIMIT_KINDS,
  lawTerms,
  lineLimits,
  STATION_STATES,
  STORE,
  safetyCause,
  TRACE_KINDS,
  workingSeconds,
  ZONE_STATES,
} from '@loopwright/line'
export { callingThread } from './runs/callingThread.ts'
export type { CarrierStay } from './trace/carrierStays.ts'
export { carrierStays } from './trace/carrierStays.ts'
export type { CarriersProgress, CarriersRequest } from './carriers/chooseCarriers.ts'
export { chooseCarriers } from './carriers/chooseCarriers.ts'
export type { CarrierStep, CarrierStudy, Look, Pilot } from './carriers/carrierStudyResult.ts'
// How many carriers
export type { SweepOptions, SweepProgress, SweepRequest } from './sweep/sweepCarriers.ts'
export { sweepCarriers } from './sweep/sweepCarriers.ts'
export type { ComparedLine, CompareRequest, CompareResult, LineToCompare } from './compare/compareLines.ts'
export { compareLines } from './compare/compareLines.ts'
export { meetsPlan, outputMean, planVerdict } from './sweep/countStudy.ts'
export { defaultCounts } from './carriers/defaultCounts.ts'
// What limits it, and why
export type { Diagnosis, DiagnosisInput, Evidence, Named } from './drivers/diagnosis.ts'
export { diagnose } from './drivers/diagnosis.ts'
export type { DriverEffect, WholeEffect } from './drivers/driverEffect.ts'
export type { DriverRequest, DriverResult, Explanation } from './drivers/findDrivers.ts'
export { findDrivers } from './drivers/findDrivers.ts'
// What drives a line
export type { Driver, DriverKind, DriverOptions } from './drivers/drivers.ts'
export { DRIVER_KINDS, driversOf, TIME_KINDS } from './drivers/drivers.ts'
export { ENGINE_VERSION } from './runs/engineVersion.ts'
// Every setting of several factors
export type { Factor } from './compare/factorial.ts'
export { factorial } from './compare/factorial.ts'
export type { GridLine, GridPoint, GridRequest, GridResult } from './compare/runGrid.ts'
export { GRID_POINTS_MAX, gridLineCount, runGrid } from './compare/runGrid.ts'
export type { LimitWarning } from './change/limitWarnings.ts'
export { limitWarnings } from './change/limitWarnings.ts'
export { lineHasChance } from './runs/lineChance.ts'
// The line without running it
export type { LineFacts, StationFacts, StopFacts } from './change/lineFacts.ts'
export { lineFacts } from './change/lineFacts.ts'
export { lineTasks } from './balance/lineTasks.ts'
// What is lost, and by what
export type { LossCause, LossCauseOptions, LossKind } from './losses/lossCauses.ts'
export { lossCauses } from './losses/lossCauses.ts'
export type { Loss, LossRequest, LossResult } from './losses/findLosses.ts'
export { findLosses } from './losses/findLosses.ts'
export type { PlanAnswer, PlanVerdict } from './sweep/planAnswer.ts'
export { planAnswer } from './sweep/planAnswer.ts'
// Threads
export type { Pool } from './runs/pool.ts'
export { createPool } from './runs/pool.ts'
// Runs of one line
export type { TracedRun } from './runs/replicate.ts'
export { replicate, traceRun } from './runs/replicate.ts'
// Several lines in the same worlds
export type { StudyOptions, StudyProgress } from './runs/studyOptions.ts'
export type { RunsIntervals, RunsResult } from './runs/runsResult.ts'
export { runsResult } from './runs/runsResult.ts'
export type { FirstAnswer } from './sweep/firstAnswer.ts'
export type { Standstill, StandstillReason } from './trace/standstill.ts'
export { standstillOf } from './trace/standstill.ts'
export type { StartQuestion } from './steady/startQuestion.ts'
export { startQuestion } from './steady/startQuestion.ts'
export type { OrderCandidate, OrderRequest, OrderResult } from './order/orderStations.ts'
export { orderStations } from './order/orderStations.ts'
// Which order of stations
export type { PlaceRules, Places } from './order/stationPlaces.ts'
export { allPlaces, placesOf, whyNotPlaces, withPlaces } from './order/stationPlaces.ts'
export type { StateShares } from './drivers/stationStates.ts'
export { stateShares } from './drivers/stationStates.ts'
// Warm-up and run length
export type { SteadyRequest, SteadyResult } from './steady/findSteadyState.ts'
export { findSteadyState } from './steady/findSteadyState.ts'
export { folderStore } from './store/folderStore.ts'
export type { KeptRuns, PruneOptions } from './store/housekeeping.ts'
export { keptIn, pruneStore } from './store/housekeeping.ts'
export { memoryStore } from './store/memoryStore.ts'
// Keeping results
export type { Store, StoreEntry, StoreReport } from './store/store.ts'
export type { Rule } from './sweep/sweepAnswer.ts'
export { sweepAnswer } from './sweep/sweepAnswer.ts'
export type { MovingRuns, NotConfirmed, StationShares, SweepAnswer, SweepCount, SweepResult, ZoneShares } from './sweep/sweepResult.ts'
export type { ForcedEngine, TraceColumns } from './runs/task.ts'
// Sharing tasks among stations
export type { BalanceRequest, BalanceResult, TaskToShare } from './balance/taskBalance.ts'
export { taskBalance } from './balance/taskBalance.ts'
export { wholeChanges } from './change/wholeChanges.ts'
export { withCarriers } from './change/withCarriers.ts'
