// The specification

// What it must obey
export type { EstimateReason } from './bounds/exactness.ts'
export type { Exchange, Law } from './bounds/law.ts'
export { law, lawOrNull, mixShares } from './bounds/law.ts'
export type { LawTerms } from './bounds/lawTerms.ts'
export { lawTerms } from './bounds/lawTerms.ts'
export { loadSupplies } from './bounds/goodsLimits.ts'
export type { Limit, LimitKind, LimitParts, LimitReason } from './bounds/limit.ts'
export { LIMIT_KINDS } from './bounds/limit.ts'
export { lineLimits } from './bounds/limits.ts'
export { availability } from './bounds/stopShares.ts'
export { workingSeconds } from './bounds/workingSeconds.ts'
export { listWords } from './words/listWords.ts'
export { stationWords } from './words/stationWords.ts'
export { isPlainLoop } from './build/graph.ts'
// Times of moves
export type { DerivedTimes } from './moves/motion.ts'
export { clearTime, derivedTimes, moveTime } from './moves/motion.ts'
export { PLAIN_LINE, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, wholeLine } from './build/plain.ts'
// What a run tells
export type {
  BreakdownResult,
  ByCarrierState,
  ByStationState,
  ByZoneState,
  CarrierResult,
  CarrierState,
  HandlingResult,
  RunEnd,
  RunResult,
  StationResult,
  StationState,
  SupplyResult,
  TallyResult,
  ZoneResult,
  ZoneState,
} from './telling/result.ts'
export type { NamedStation, NamedZone } from './telling/named.ts'
export { stationOf, zoneOf } from './telling/named.ts'
export { CARRIER_STATES, STATION_STATES, safetyCause, ZONE_STATES } from './telling/result.ts'
// Running it
export type { SimulateOptions, Simulator } from './simulate.ts'
export { createSimulator, simulate } from './simulate.ts'
export type {
  ArrivalsSpec,
  BreakdownPart,
  BreakdownSpec,
  BreakSpec,
  CarriersSpec,
  InspectionSpec,
  LineSpec,
  ManualSpec,
  MergeSpec,
  MixSpec,
  OperatorSpec,
  PathSpec,
  Position,
  ReceiverSpec,
  ReworkSpec,
  SafetyStopSpec,
  SectionSpec,
  StationSpec,
  SupplySpec,
  TakesSpec,
  TaskSpec,
  TransferSpec,
  WalkSpec,
  WindowSpec,
  ZoneSpec,
} from './spec.ts'
export { STORE } from './spec.ts'
export { startZones } from './build/start.ts'
export type { TraceKind } from './telling/trace.ts'
export { TRACE_KINDS, Trace } from './telling/trace.ts'
