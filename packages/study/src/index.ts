// How a study is carried out
export type { GrowingOptions, StudyOptions, StudyProgress } from './runs/studyOptions.ts'
export { ENGINE_VERSION } from './runs/engineVersion.ts'

// Runs of a line
export { replicate, traceRun } from './runs/replicate.ts'
export type { TracedRun, TraceRequest } from './runs/replicate.ts'
export type { EventWish, ForcedEngine, TraceColumns } from './runs/task.ts'
export { runMany, runsResult } from './runs/runsResult.ts'
export type { RunsResult, RunsIntervals } from './runs/runsResult.ts'

// How many carriers
export { sweepCarriers } from './sweep/sweepCarriers.ts'
export type { SweepRequest, SweepOptions, SweepProgress } from './sweep/sweepCarriers.ts'
export type { FirstAnswer } from './sweep/firstAnswer.ts'
export type { SweepResult, SweepCount, SweepAnswer, NotConfirmed, MovingRuns, StationShares, ZoneShares } from './sweep/sweepResult.ts'
export { growingSweep } from './sweep/growingSweep.ts'
export type { GrowingSweep, GrowingSweepRequest } from './sweep/growingSweep.ts'
export { chooseCarriers } from './carriers/chooseCarriers.ts'
export type { CarriersRequest, CarriersProgress } from './carriers/chooseCarriers.ts'
export type { CarrierStudy, CarrierStep, Look, Pilot } from './carriers/carrierStudyResult.ts'
export { defaultCounts, mostCarriers } from './carriers/defaultCounts.ts'
export { sweepAnswer } from './sweep/sweepAnswer.ts'
export type { Rule } from './sweep/sweepAnswer.ts'

// The plan
export { planAnswer } from './sweep/planAnswer.ts'
export type { PlanAnswer, PlanVerdict } from './sweep/planAnswer.ts'
export { meetsPlan, planVerdict, outputMean } from './sweep/countStudy.ts'
export { CONTROL_NAMES } from './controls/lineControls.ts'

// Why no more
export { findDrivers } from './drivers/findDrivers.ts'
export type { DriverRequest, DriverResult, Explanation } from './drivers/findDrivers.ts'
export type { DriverEffect, WholeEffect } from './drivers/driverEffect.ts'
export { DRIVER_KINDS } from './drivers/drivers.ts'
export type { DriverKind, DriverOptions } from './drivers/drivers.ts'
export { diagnose } from './drivers/diagnosis.ts'
export type { DiagnosisInput, Diagnosis, Evidence, Named } from './drivers/diagnosis.ts'
export { findLosses } from './losses/findLosses.ts'
export type { LossRequest, LossResult, Loss } from './losses/findLosses.ts'
export type { LossKind } from './losses/lossCauses.ts'

// What the inputs do not know
export { inputDoubt } from './doubt/inputDoubt.ts'
export type { DoubtRequest, DoubtResult, RedrawnLine } from './doubt/inputDoubt.ts'

// Where stations stand
export { orderStations } from './order/orderStations.ts'
export type { OrderRequest, OrderResult, OrderCandidate } from './order/orderStations.ts'

// How long the start shows
export { findSteadyState } from './steady/findSteadyState.ts'
export type { SteadyRequest, SteadyResult } from './steady/findSteadyState.ts'
export { startQuestion } from './steady/startQuestion.ts'
export type { StartQuestion } from './steady/startQuestion.ts'

// A run looked at
export { carrierStays } from './trace/carrierStays.ts'
export type { CarrierStay } from './trace/carrierStays.ts'
export { standstillOf } from './trace/standstill.ts'
export type { Standstill, StandstillReason } from './trace/standstill.ts'
