/** The story of a carrier sweep, as cells: the same in a notebook and in the page of a sweep. */
import type { Scenario } from '@loopwright/scenario'
import type { SweepResult } from '@loopwright/study'
import type { AnswerCell, CautionCell, Cell, ChartCell, ChoiceCell, PlanCell, ProseCell, SweepCell, TableCell } from './cell.ts'

export interface SweepStoryOptions {
  /** path of the scenario file, as the reader would type it */
  readonly scenarioFile: string
}

export interface CarrierSweepStory {
  /** what was simulated: seed, replications, version, hash */
  readonly sweep: SweepCell
  readonly answer: AnswerCell
  /** said only where it holds: partial results, gridlock, a best count at the upper end */
  readonly warnings: readonly CautionCell[]
  readonly table: TableCell
  readonly throughput: ChartCell
  /** the carrier count that the cells after it show */
  readonly choice: ChoiceCell
  readonly stations: ChartCell
  readonly plan: PlanCell
  readonly occupancy: ChartCell
  readonly byHour: ChartCell
  readonly distribution: ChartCell
  readonly stops: ChartCell
  /** all inputs, in shop-floor units */
  readonly assumptions: readonly (ProseCell | TableCell)[]
  readonly cautions: readonly CautionCell[]
}

/** The story's parts, by name. */
export declare function carrierSweepStory(scenario: Scenario, result: SweepResult, options: SweepStoryOptions): CarrierSweepStory

/** All cells of the story, in the order of the page. */
export declare function carrierSweepCells(scenario: Scenario, result: SweepResult, options: SweepStoryOptions): readonly Cell[]
