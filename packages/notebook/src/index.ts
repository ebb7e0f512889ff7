// Writing a notebook

// The story of a carrier sweep
export type { CarrierSweepStory, SweepStoryOptions } from './carrierSweepStory.ts'
export { carrierSweepCells, carrierSweepStory } from './carrierSweepStory.ts'
// What it is made of
export type {
  AnswerCell,
  CautionCell,
  Cell,
  CellKind,
  ChartCell,
  ChoiceCell,
  PlanCell,
  ProseCell,
  Provenance,
  RunCell,
  SweepCell,
  TableCell,
  Views,
} from './cell.ts'
export { oneView } from './cell.ts'
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
export type { ForecastResult, ForecastStory } from './forecast/forecastStory.ts'
export { forecastStory } from './forecast/forecastStory.ts'
// Inputs
export { generalInputs } from './inputs/generalInputs.ts'
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
export type { PlaceRequest } from './study/placeRules.ts'
export type { ForecastRequest, OrderRequest, StudyContext, StudyRequest } from './study/studyContext.ts'
// The loop as drawn
export { planZones } from './sweep/plan.ts'
export { terminalText } from './terminal.ts'
export type { PageHead } from './writePage.ts'
export { writePage } from './writePage.ts'
