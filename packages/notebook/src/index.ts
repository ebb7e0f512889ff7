// Writing a notebook
export { notebook } from './runner/notebook.ts'
export type { Notebook, NotebookHead, NotebookContext, StoryTeller, SweepRequest, CarriersRequest } from './runner/notebook.ts'
export type { StudyContext, StudyRequest, OrderRequest, ForecastRequest, GridRequest } from './study/studyContext.ts'
export type { ChartSpec, ChartWords, RowsChart } from './own/ownChart.ts'
export type { InputRange } from './own/ownInput.ts'
export type { TableOptions } from './own/ownTable.ts'
export type { OwnRow, OwnValue } from './own/rows.ts'
export type { NotebookScenario } from './own/scenarioWith.ts'

// What it is made of
export { oneView, proseCell, tableCell, warningCell } from './cells/cell.ts'
export type {
  Cell,
  CellKind,
  AnswerCell,
  CautionCell,
  ChartCell,
  ChoiceCell,
  DataCell,
  PlanCell,
  ProseCell,
  RunCell,
  SureCell,
  SweepCell,
  TableCell,
  Views,
  Provenance,
} from './cells/cell.ts'
export type { Figure, Picture } from './cells/figure.ts'

// Running one
export { runNotebook } from './runner/run.ts'
export type { RunNotebookOptions, NotebookRun } from './runner/run.ts'
export type { Effects } from './runner/effects.ts'

// The tale of a study
export { emptyTale } from './cells/tale.ts'
export type { Tale } from './cells/tale.ts'
export type { StoryOptions } from './words/storyOptions.ts'
export { checkStory } from './check/checkStory.ts'
export type { CheckStory } from './check/checkStory.ts'
export { runsStory } from './runs/runsStory.ts'
export type { RunsStory } from './runs/runsStory.ts'
export { carrierSweepStory } from './sweep/carrierSweepStory.ts'
export type { CarrierSweepStory } from './sweep/carrierSweepStory.ts'
export { forecastStory } from './forecast/forecastStory.ts'
export type { ForecastStory } from './forecast/forecastStory.ts'
export { forecastOf } from './forecast/forecastOf.ts'
export { usualShiftsPerWeek } from './forecast/weeks.ts'
export type { ForecastResult } from './forecast/forecastOf.ts'
export type { Forecast, Spread, Overtime } from './forecast/forecast.ts'
export { compareStory, lineAverages } from './compare/compareStory.ts'
export type { CompareStory, LineAverages } from './compare/compareStory.ts'
export { gridStory } from './grid/gridStory.ts'
export type { GridStory } from './grid/gridStory.ts'
export { driverStory } from './drivers/driverStory.ts'
export type { DriverStory } from './drivers/driverStory.ts'
export { lossStory } from './losses/lossStory.ts'
export type { LossStory } from './losses/lossStory.ts'
export { orderStory } from './order/orderStory.ts'
export type { OrderStory } from './order/orderStory.ts'
export { steadyStory } from './steady/steadyStory.ts'
export type { SteadyStory } from './steady/steadyStory.ts'

// What was simulated
export { simulatedCell } from './study/simulatedCell.ts'
export type { Simulated } from './study/simulatedCell.ts'
export { simulatedWords } from './study/simulatedWords.ts'
export type { SimulatedStudy } from './study/simulatedWords.ts'
export { period } from './sweep/period.ts'
export type { Period, LineNoun } from './sweep/period.ts'
export { seedWords } from './words/seedWords.ts'
export { studyStage } from './terminal/progressLine.ts'

// The settings of a grid
export { gridLines } from './grid/gridLines.ts'
export type { GridLines, GridLevels, GridSource } from './grid/gridLines.ts'

// Cells to text, to files of tables, and to one self-contained HTML file
export type { TerminalOptions } from './terminal/terminalOptions.ts'
export { printer } from './terminal/printer.ts'
export type { Printer } from './terminal/printer.ts'
export { cellTables } from './cells/cellTables.ts'
export type { FileTable } from './cells/cellTables.ts'
export { writePage } from './runner/writePage.ts'
export type { PageHead } from './runner/writePage.ts'
