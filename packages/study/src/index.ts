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
export { callingThread } from './callingThread.ts'
export type { CarrierStay } from './carrierStays.ts'
export { carrierStays } from './carrierStays.ts'
export type { CarrierStudyOptions, CarrierStudyProgress } from './carrierStudy.ts'
export { carrierStudy } from './carrierStudy.ts'
export type { CarrierStep, CarrierStudy, Look, Pilot } from './carrierStudyResult.ts'
// How many carriers
export type { CarrierSweepOptions, SweepOptions, SweepProgress } from './carrierSweep.ts'
export { carrierSweep, sweepHere } from './carrierSweep.ts'
export type { ComparedLine, CompareRequest, CompareResult, LineToCompare } from './compareLines.ts'
export { compareLines } from './compareLines.ts'
export { meetsPlan, outputMean, planVerdict } from './countStudy.ts'
export { defaultCounts } from './defaultCounts.ts'
// What limits it, and why
export type { Diagnosis, DiagnosisInput, Evidence, Named } from './diagnosis.ts'
export { diagnose } from './diagnosis.ts'
export type { DriverEffect, DriverRequest, DriverResult, Explanation, WholeEffect } from './driverStudy.ts'
export { driverStudy } from './driverStudy.ts'
// What drives a line
export type { Driver, DriverKind, DriverOptions } from './drivers.ts'
export { DRIVER_KINDS, driversOf, TIME_KINDS } from './drivers.ts'
export { ENGINE_VERSION } from './engineVersion.ts'
// Every setting of several factors
export type { Factor } from './factorial.ts'
export { factorial } from './factorial.ts'
export type { GridLine, GridPoint, GridRequest, GridResult } from './gridStudy.ts'
export { GRID_POINTS_MAX, gridLineCount, gridStudy } from './gridStudy.ts'
export type { LimitWarning } from './limitWarnings.ts'
export { limitWarnings } from './limitWarnings.ts'
export { lineHasChance } from './lineChance.ts'
// The line without running it
export type { LineFacts, StationFacts, StopFacts } from './lineFacts.ts'
export { lineFacts } from './lineFacts.ts'
export { lineTasks } from './lineTasks.ts'
// What is lost, and by what
export type { LossCause, LossCauseOptions, LossKind } from './lossCauses.ts'
export { lossCauses } from './lossCauses.ts'
export type { Loss, LossRequest, LossResult } from './lossWaterfall.ts'
export { lossWaterfall } from './lossWaterfall.ts'
export type { PoolOptions } from './openPool.ts'
export type { PlanAnswer, PlanVerdict } from './planAnswer.ts'
export { planAnswer } from './planAnswer.ts'
// Threads
export type { Pool } from './pool.ts'
export { createPool } from './pool.ts'
// Runs of one line
export type { ReplicateOptions, ReplicateThreadsOptions, TracedRun } from './replicate.ts'
export { replicate, replicateHere, tracedRun } from './replicate.ts'
// Several lines in the same worlds
export type { LineRows, Runner, RunnerProgress, ThreadRunnerOptions, WorldRange } from './runner.ts'
export { hereRunner, threadRunner, unitsOf } from './runner.ts'
export type { RunsIntervals, RunsResult } from './runsResult.ts'
export { runsResult } from './runsResult.ts'
export { scaledTimes } from './scaledTimes.ts'
export type { FirstAnswer } from './soFar.ts'
export type { Standstill, StandstillReason } from './standstill.ts'
export { standstillOf } from './standstill.ts'
export type { StartQuestion } from './startQuestion.ts'
export { startQuestion } from './startQuestion.ts'
export type { OrderCandidate, OrderRequest, OrderResult } from './stationOrder.ts'
export { stationOrder } from './stationOrder.ts'
// Which order of stations
export type { PlaceRules, Places } from './stationPlaces.ts'
export { allPlaces, placesOf, whyNotPlaces, withPlaces } from './stationPlaces.ts'
export type { StateShares } from './stationStates.ts'
export { stateShares } from './stationStates.ts'
// Warm-up and run length
export type { SteadyRequest, SteadyResult, TracedRuns } from './steadyState.ts'
export { steadyState, threadTraces, tracesHere } from './steadyState.ts'
export { folderStore } from './store/folderStore.ts'
export type { KeptRuns, PruneOptions } from './store/housekeeping.ts'
export { keptIn, pruneStore } from './store/housekeeping.ts'
export { memoryStore } from './store/memoryStore.ts'
// Keeping results
export type { Store, StoreEntry, StoreReport } from './store/store.ts'
export type { Rule } from './sweepAnswer.ts'
export { sweepAnswer } from './sweepAnswer.ts'
export type { MovingRuns, NotConfirmed, StationShares, SweepAnswer, SweepCount, SweepResult, ZoneShares } from './sweepResult.ts'
export type { ForcedEngine, TraceColumns } from './task.ts'
// Sharing tasks among stations
export type { BalanceRequest, BalanceResult, TaskToShare } from './taskBalance.ts'
export { taskBalance } from './taskBalance.ts'
export { wholeChanges } from './wholeChanges.ts'
export { withCarriers } from './withCarriers.ts'
