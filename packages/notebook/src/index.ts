// Writing a notebook
export type { CarriersRequest, Notebook, NotebookContext, NotebookHead, SweepRequest } from './notebook.ts'
export { notebook } from './notebook.ts'
// Running one
export type { Effects } from './effects.ts'
export type { NotebookRun, RunNotebookOptions } from './run.ts'
export { runNotebook } from './run.ts'
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
export type { Figure, Picture } from './figure.ts'
// The story of a carrier sweep
export type { CarrierSweepStory, SweepStoryOptions } from './carrierSweepStory.ts'
export { carrierSweepCells, carrierSweepStory } from './carrierSweepStory.ts'
// What is being done, in one line
export { studyStage } from './progressLine.ts'
// Cells to text, and to one self-contained HTML file
export type { Printer } from './printer.ts'
export { printer } from './printer.ts'
export { terminalText } from './terminal.ts'
export type { PageHead } from './writePage.ts'
export { writePage } from './writePage.ts'
// The loop as drawn
export { planZones } from './sweep/plan.ts'
