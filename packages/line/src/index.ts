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
// A line from code
export type { LineChange } from './builder/change.ts'
export type { LineProblem } from './builder/report.ts'
export { LineError } from './builder/report.ts'
export type {
  CarriersSketch,
  DriveSketch,
  Duty,
  LineSketch,
  OperatorSketch,
  PathSketch,
  PlaceRef,
  ProductsSketch,
  PutIn,
  Ref,
  StationSketch,
  StopSketch,
  SupplySketch,
  TaskTimes,
  Time,
  ZoneSketch,
} from './builder/sketch.ts'
export type { SketchedLine } from './builder/sketchedLine.ts'
export { graphLine, loopLine, straightLine } from './builder/sketchedLine.ts'
// What is wrong with a line, for those that read it from elsewhere
export { checkLine } from './check/checkLine.ts'
export type { Finding, Place } from './check/finding.ts'
export { tellTogether } from './check/finding.ts'
export type { LineSoFar } from './check/lineSoFar.ts'
export { meanStay } from './check/meanStay.ts'
export { nameFault, titleFault } from './check/nameFault.ts'
export { nearest } from './check/nearest.ts'
export { checkParts } from './check/physical.ts'
export { checkFlow, productZones } from './check/reach.ts'
export type { Sentence } from './check/sentence.ts'
export { sentenceWords } from './check/sentence.ts'
export { sentences } from './check/sentences.ts'
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
export type { Simulator, SimulatorOptions, World } from './simulate.ts'
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
