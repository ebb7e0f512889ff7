// A line from code
export { loopLine, straightLine, graphLine } from './builder/sketchedLine.ts'
export type { SketchedLine } from './builder/sketchedLine.ts'
export { completeLine } from './builder/givenLine.ts'
export type { GivenLine } from './builder/givenLine.ts'
export type {
  LineSketch,
  ZoneSketch,
  PathSketch,
  PlaceRef,
  PutIn,
  StationSketch,
  Duty,
  TaskTimes,
  Time,
  Ref,
  OperatorSketch,
  CarriersSketch,
  DriveSketch,
  ProductsSketch,
  SupplySketch,
  StopSketch,
} from './builder/sketch.ts'
export type { LineChange, StationChange } from './builder/change.ts'
export { LineError } from './builder/report.ts'
export type { LineProblem } from './builder/report.ts'

// A line, complete
export { STORE } from './spec.ts'
export type {
  LineSpec,
  ZoneSpec,
  PathSpec,
  SectionSpec,
  TransferSpec,
  MergeSpec,
  TakesSpec,
  StationSpec,
  TaskSpec,
  InspectionSpec,
  ReworkSpec,
  ManualSpec,
  WalkSpec,
  OperatorSpec,
  CarriersSpec,
  Position,
  MixSpec,
  SupplySpec,
  ArrivalsSpec,
  ReceiverSpec,
  BreakSpec,
  BreakdownSpec,
  BreakdownPart,
  SafetyStopSpec,
  WindowSpec,
} from './spec.ts'
export { PLAIN_LINE, PLAIN_PATH, PLAIN_STATION, PLAIN_ZONE, wholeLine } from './build/plain.ts'
export { isPlainLoop } from './build/graph.ts'
export { startZones } from './build/startPlaces.ts'
export { DUTIES, tasksOf } from './stationTasks.ts'

// Running it
export { simulate, createSimulator } from './simulate.ts'
export { canRecur } from './recursion/canRecur.ts'
export type { RecursionFit } from './recursion/canRecur.ts'
export type { Simulator, SimulatorOptions, World } from './simulate.ts'
export type { Pieces } from './instant/pieces.ts'

// What a run tells
export { STATION_STATES, ZONE_STATES, CARRIER_STATES } from './telling/result.ts'
export { stopSources, stopsOf } from './telling/stopSources.ts'
export type { StopSource } from './telling/stopSources.ts'
export type {
  RunResult,
  RunEnd,
  StationResult,
  StationState,
  ByStationState,
  ZoneResult,
  ZoneState,
  ByZoneState,
  CarrierResult,
  CarrierState,
  ByCarrierState,
  BreakdownResult,
  SupplyResult,
  HandlingResult,
  TallyResult,
} from './telling/result.ts'
export type { RunTotals } from './telling/totals.ts'
export { stationOf, zoneOf } from './telling/named.ts'
export type { NamedStation, NamedZone } from './telling/named.ts'
export { Trace, TRACE_KINDS } from './telling/trace.ts'
export type { TraceKind } from './telling/trace.ts'

// Times of moves
export { derivedTimes } from './moves/motion.ts'
export type { DerivedTimes } from './moves/motion.ts'

// What its parts are called
export { stationWords } from './words/stationWords.ts'
export { listWords } from './words/listWords.ts'
