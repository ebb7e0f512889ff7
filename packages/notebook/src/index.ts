// Writing a notebook

export type { BalanceStory, BalanceStoryOptions } from './balance/balanceStory.ts'
export { balanceStory } from './balance/balanceStory.ts'
// The story of a carrier sweep
export type { CarrierSweepStory } from './carrierSweepStory.ts'
export { carrierSweepStory } from './carrierSweepStory.ts'
// What it is made of
export type {
  AnswerCell,
  CautionCell,
  Cell,
  CellKind,
  ChartCell,
  ChoiceCell,
  DataCell,
  PlanCell,
  ProseCell,
  Provenance,
  RunCell,
  SureCell,
  SweepCell,
  TableCell,
  Views,
} from './cell.ts'
export { oneView, proseCell, tableCell, warningCell } from './cell.ts'
// Cells to files of tables
export type { FileTable } from './cellTables.ts'
export { cellTables } from './cellTables.ts'
export type { CheckStory } from './check/checkStory.ts'
export { checkStory } from './check/checkStory.ts'
// The stories of other studies
export type { CompareStory, LineAverages } from './compare/compareStory.ts'
export { compareStory, lineAverages } from './compare/compareStory.ts'
export { differenceSentence } from './compare/compareWords.ts'
export type { DriverStory } from './drivers/driverStory.ts'
export { driverStory } from './drivers/driverStory.ts'
// Running one
export type { Effects } from './effects.ts'
export type { Figure, Picture } from './figure.ts'
export type { Forecast, ForecastOptions, Overtime, Spread } from './forecast/forecast.ts'
export { forecast } from './forecast/forecast.ts'
export type { ForecastResult } from './forecast/forecastOf.ts'
export { forecastOf } from './forecast/forecastOf.ts'
export type { ForecastStory } from './forecast/forecastStory.ts'
export { forecastStory } from './forecast/forecastStory.ts'
// A grid
export type { GridLevels, GridLines, GridSource } from './grid/gridLines.ts'
export { gridLines } from './grid/gridLines.ts'
export type { GridStory } from './grid/gridStory.ts'
export { gridStory } from './grid/gridStory.ts'
export { gridSentences, gridSure } from './grid/gridWords.ts'
// Inputs
export { generalInputs } from './inputs/generalInputs.ts'
// What limits a line
export { diagnosisSentences } from './limits/diagnosisWords.ts'
export type { LimitsTold } from './limits/limitWords.ts'
export { limitsTold } from './limits/limitWords.ts'
export { wholeChangeName, wholeChangeSentence, wholeChangeTable } from './limits/wholeChangeWords.ts'
export type { LossStory } from './losses/lossStory.ts'
export { lossStory } from './losses/lossStory.ts'
export type { CarriersRequest, Notebook, NotebookContext, NotebookHead, StoryTeller, SweepRequest } from './notebook.ts'
export { notebook } from './notebook.ts'
export type { OrderStory } from './order/orderStory.ts'
export { orderStory } from './order/orderStory.ts'
// Cells to text, and to one self-contained HTML file
export type { Printer } from './printer.ts'
export { printer } from './printer.ts'
// What is being done, in one line
export { studyStage } from './progressLine.ts'
export type { NotebookRun, RunNotebookOptions } from './run.ts'
export { runNotebook } from './run.ts'
// The story of one line as it stands
export type { RunsStory } from './runs/runsStory.ts'
export { runsStory } from './runs/runsStory.ts'
export type { SteadyStory } from './steady/steadyStory.ts'
export { steadyStory } from './steady/steadyStory.ts'
export type { PlaceRequest } from './study/placeRules.ts'
export type { Simulated } from './study/simulatedCell.ts'
export { simulatedCell } from './study/simulatedCell.ts'
export { seedWords } from './words/seedWords.ts'
export type { SimulatedStudy } from './study/simulatedWords.ts'
export { simulatedWords } from './study/simulatedWords.ts'
export type { ForecastRequest, GridRequest, OrderRequest, StudyContext, StudyRequest } from './study/studyContext.ts'
// What the line and its windows are called
export type { LineNoun, Named, Period } from './sweep/period.ts'
export { lineNoun, period } from './sweep/period.ts'
// The loop as drawn
export { planZones } from './sweep/plan.ts'
// A study told
export type { Tale } from './tale.ts'
export { emptyTale } from './tale.ts'
export { terminalText } from './terminal.ts'
export type { TerminalOptions } from './terminalOptions.ts'
// Events of a run
export type { TraceEvent } from './trace/eventWords.ts'
export { TRACE_HEAD, traceLine } from './trace/eventWords.ts'
export type { TraceStory, TraceStoryOptions } from './trace/traceStory.ts'
export { traceStory } from './trace/traceStory.ts'
export type { StoryOptions } from './words/storyOptions.ts'
export type { PageHead } from './writePage.ts'
export { writePage } from './writePage.ts'
