// Writing a notebook

export type { BalanceStory, BalanceStoryOptions } from './balance/balanceStory.ts'
export { balanceStory } from './balance/balanceStory.ts'
// The story of a carrier sweep
export type { CarrierSweepStory } from './sweep/carrierSweepStory.ts'
export { carrierSweepStory } from './sweep/carrierSweepStory.ts'
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
} from './cells/cell.ts'
export { oneView, proseCell, tableCell, warningCell } from './cells/cell.ts'
// Cells to files of tables
export type { FileTable } from './cells/cellTables.ts'
export { cellTables } from './cells/cellTables.ts'
export type { CheckStory } from './check/checkStory.ts'
export { checkStory } from './check/checkStory.ts'
// The stories of other studies
export type { CompareStory, LineAverages } from './compare/compareStory.ts'
export { compareStory, lineAverages } from './compare/compareStory.ts'
export { differenceSentence } from './compare/compareWords.ts'
export type { DriverStory } from './drivers/driverStory.ts'
export { driverStory } from './drivers/driverStory.ts'
// Running one
export type { Effects } from './runner/effects.ts'
export type { Figure, Picture } from './cells/figure.ts'
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
export type { CarriersRequest, Notebook, NotebookContext, NotebookHead, StoryTeller, SweepRequest } from './runner/notebook.ts'
export { notebook } from './runner/notebook.ts'
export type { OrderStory } from './order/orderStory.ts'
export { orderStory } from './order/orderStory.ts'
// Cells to text, and to one self-contained HTML file
export type { Printer } from './terminal/printer.ts'
export { printer } from './terminal/printer.ts'
// What is being done, in one line
export { studyStage } from './terminal/progressLine.ts'
export type { NotebookRun, RunNotebookOptions } from './runner/run.ts'
export { runNotebook } from './runner/run.ts'
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
export type { Tale } from './cells/tale.ts'
export { emptyTale } from './cells/tale.ts'
export { terminalText } from './terminal/terminal.ts'
export type { TerminalOptions } from './terminal/terminalOptions.ts'
// Events of a run
export type { TraceEvent } from './trace/eventWords.ts'
export { TRACE_HEAD, traceLine } from './trace/eventWords.ts'
export type { TraceStory, TraceStoryOptions } from './trace/traceStory.ts'
export { traceStory } from './trace/traceStory.ts'
export type { StoryOptions } from './words/storyOptions.ts'
export type { PageHead } from './runner/writePage.ts'
export { writePage } from './runner/writePage.ts'
