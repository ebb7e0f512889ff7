/** The story of a carrier sweep, as cells: the same in a notebook and in the page of a sweep. */

import type { Figure as ChartFigure } from '@loopwright/charts'
import { outputByHour, statesIn, stationTimes, stoppedTime, throughput, unitsSpread, zoneOccupancy } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { CarrierStudy, SweepCount, SweepResult } from '@loopwright/study'
import {
  type AnswerCell,
  type CautionCell,
  type Cell,
  type ChartCell,
  type ChoiceCell,
  oneView,
  type PlanCell,
  type ProseCell,
  type SweepCell,
  type TableCell,
  type Views,
} from './cell.ts'
import type { Figure } from './figure.ts'
import { assumptionCells } from './inputs/assumptions.ts'
import { defaultInputs } from './inputs/defaultInputs.ts'
import { answerSentences, sureSentences } from './sweep/answerWords.ts'
import { standingCautions, warnings } from './sweep/cautions.ts'
import { countTable } from './sweep/countTable.ts'
import { period } from './sweep/period.ts'
import { occupancyPlan } from './sweep/plan.ts'
import { studySentences, studySureSentences } from './sweep/studyWords.ts'
import { sweepCell } from './sweep/sweepCell.ts'

export interface SweepStoryOptions {
  /** path of the scenario file, as the reader would type it */
  readonly scenarioFile: string
  /** what stands in it: the page then tells which inputs are defaults. Default: it does not */
  readonly scenarioText?: string
  /** text of a data file that the scenario names; default: such files cannot be opened */
  readonly readBeside?: (path: string) => string | null
}

export interface CarrierSweepStory {
  /** what was simulated: seed, replications, version, hash */
  readonly sweep: SweepCell
  readonly answer: AnswerCell
  /** said only where it holds: partial results, gridlock, a best count at the upper end */
  readonly warnings: readonly CautionCell[]
  readonly throughput: ChartCell
  readonly table: TableCell
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

/** id of the choice that switches the count */
const CHOICE = 'carriers'

/**
 * The story's parts, by name.
 *
 * @throws RangeError  if no count has a replication: there is nothing to tell
 */
export function carrierSweepStory(scenario: Scenario, of: SweepResult | CarrierStudy, options: SweepStoryOptions): CarrierSweepStory {
  const study = of.kind === 'carrier study' ? of : null
  const result: SweepResult = { ...of, kind: 'carrier sweep' }
  const told = result.counts.filter((count) => count.replications > 0)
  if (told.length === 0) throw new RangeError('a sweep without a single replication has no story to tell')
  const words = period(scenario)
  const shown = result.answer?.chosen ?? result.answer?.best ?? told[0]!.carriers
  const windowWords = {
    per: words.one,
    windowSeconds: result.window.endSeconds - result.window.warmupSeconds,
    netSeconds: result.lawSeconds / (result.law?.unitsPerLap ?? 1),
    plan: words.plan,
  }
  const { scenarioText, scenarioFile, readBeside } = options
  const defaults = scenarioText === undefined ? null : defaultInputs(scenarioText, scenarioFile, readBeside ?? (() => null))
  const byCount = countTable(result, words)
  const states = statesIn(told)
  const places = scenario.line.zones.map((zone, index) => ({
    station: scenario.line.stations.find((station) => station.zone === index)?.title ?? null,
    transfer: zone.transfer !== null,
  }))
  const occupancy = (count: SweepCount): ChartFigure => zoneOccupancy(count, { ...windowWords, places })
  const views = (figure: (count: SweepCount) => Figure): Views<Figure> => ({
    choice: CHOICE,
    shown: String(shown),
    of: told.map((count) => ({ key: String(count.carriers), content: figure(count) })),
  })
  const chart = (id: string, figure: (count: SweepCount) => ChartFigure): ChartCell => ({
    kind: 'chart',
    id,
    views: views((count) => chartFigure(figure(count))),
  })
  return {
    sweep: sweepCell(scenario, of, options.scenarioFile),
    answer: {
      kind: 'answer',
      id: 'answer',
      sentences:
        study === null ? answerSentences(result, words) : [...answerSentences(result, words, false), ...studySentences(study, words)],
      sure: [...(study === null ? [] : studySureSentences(study)), ...sureSentences(result, words)],
    },
    warnings: warnings(result, words),
    throughput: {
      kind: 'chart',
      id: 'throughput',
      views: oneView({ ...chartFigure(throughput(result, windowWords)), table: byCount, tableOpen: true }),
    },
    table: { kind: 'table', id: 'counts', where: 'terminal', views: oneView(byCount) },
    choice: {
      kind: 'choice',
      id: CHOICE,
      legend: result.answer?.chosen == null ? 'Carriers on the loop' : `Carriers on the loop (the answer: ${result.answer.chosen})`,
      options: told.map(({ carriers }) => ({ key: String(carriers), label: String(carriers) })),
      shown: String(shown),
    },
    stations: chart('stations', (count) => stationTimes(count, { ...windowWords, states })),
    plan: { kind: 'plan', id: 'plan', views: views((count) => occupancyPlan(scenario, count, words)) },
    occupancy: chart('occupancy', occupancy),
    byHour: chart('by-hour', (count) => outputByHour(count, windowWords)),
    distribution: chart('distribution', (count) => unitsSpread(count, windowWords)),
    stops: chart('stops', (count) => stoppedTime(count, windowWords)),
    assumptions: assumptionCells(scenario, result, defaults),
    cautions: standingCautions(scenario.line),
  }
}

/** All cells of the story, in the order of the page. */
export function carrierSweepCells(scenario: Scenario, result: SweepResult | CarrierStudy, options: SweepStoryOptions): readonly Cell[] {
  const story = carrierSweepStory(scenario, result, options)
  const section = (id: string, title: string): ProseCell => ({ kind: 'prose', id, markdown: `## ${title}` })
  return [
    story.sweep,
    story.answer,
    ...story.warnings,
    section('section-counts', 'Output by number of carriers'),
    story.throughput,
    story.table,
    section('section-count', 'One number of carriers, closer'),
    story.choice,
    story.stations,
    story.plan,
    story.occupancy,
    story.byHour,
    story.distribution,
    story.stops,
    ...story.assumptions,
    section('section-cautions', 'Cautions'),
    ...story.cautions,
  ]
}

/** A chart as a cell holds it. */
function chartFigure(chart: ChartFigure): Figure {
  const { spec, rows, swapRows, finding, alt, readLine, table } = chart
  return { finding, picture: { kind: 'chart', spec, rows, swapRows }, alt, howToRead: readLine, table, tableOpen: false }
}
