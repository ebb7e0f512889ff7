/** The story of one line as it stands, as cells: one run, or means over several. */
import { waitingCircle } from '@loopwright/charts'
import type { RunResult } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { planAnswer, type RunsResult, type SweepResult, standstillOf, sweepAnswer } from '@loopwright/study'
import { type CarrierSweepStory, carrierSweepStory, countCells } from '../sweep/carrierSweepStory.ts'
import type { AnswerCell, Cell, ChartCell, DataCell, SureCell } from '../cells/cell.ts'
import { chartCell, opened } from '../cells/chartCell.ts'
import { sectionCell } from '../cells/cell.ts'
import { standingCells } from '../study/standing.ts'
import { period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { toned } from '../words/planWords.ts'
import { questionFor } from '../words/questionWords.ts'
import { startSentence } from '../words/startWords.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import { runData } from './runData.ts'
import { oneRunSentence, runFigures, runSentences } from './runWords.ts'

/** Parts of a sweep's story that also tell of one count. */
type Parts = Omit<CarrierSweepStory, 'throughput' | 'choice' | 'question' | 'cells'>

/** The tale of a line as it stands, and its parts by name. */
export interface RunsStory extends Parts, Tale {
  /** the circle of waiting zones where a single run stood still; null: it did not */
  readonly standstill: ChartCell | null
  /** of a single run: its outputs, hours, stations, zones, carriers and stops in full */
  readonly data: readonly DataCell[]
}

/**
 * The tale of a line as it stands: one run in full, or means over several.
 *
 * @param single  the run, where there is only one
 * @throws RangeError  if there is no run
 * @example runsStory(scenario, runsResult(scenario.line, await replicate(scenario.line, { replications: 2 }, { seed: '1', workers: 0 }), { seed: '1', replications: 2, plan: null }), null, { scenarioFile: 'ring.yaml' }).question // => 'What does the ring make?'
 */
export function runsStory(scenario: Scenario, result: RunsResult, single: RunResult | null, options: StoryOptions): RunsStory {
  const words = period(scenario)
  const story = carrierSweepStory(scenario, asSweep(result), options)
  const { throughput: _, choice: __, cells: ___, ...parts } = story
  const told: Omit<RunsStory, 'cells'> = {
    ...parts,
    answer: {
      ...parts.answer,
      sentences: single === null ? parts.answer.sentences : runSentences(scenario, single),
      figures: single === null ? (parts.answer.figures ?? []) : runFigures(scenario, single),
      ...(single === null ? {} : toned(singleTone(scenario, single))),
    } satisfies AnswerCell,
    sure: {
      ...parts.sure,
      sentences: single === null || !result.chance ? parts.sure.sentences : [oneRunSentence(words), startSentence(scenario)],
    } satisfies SureCell,
    warnings: parts.warnings.filter(({ id }) => single === null || !OF_ENDS.has(id)),
    stations: { ...opened(parts.stations), pageOnly: false, lead: true },
    standstill: standstillCell(scenario, single),
    data: single === null ? [] : runData(single),
    question: questionFor('output', scenario, words.line),
  }
  return { ...told, cells: cellsOf(told, result.count.replications) }
}

/** Of one run: it stood still, or its plan was met or missed. */
function singleTone({ plan }: Scenario, run: RunResult): 'good' | 'bad' | undefined {
  if (run.end.reason !== 'end of window') return 'bad'
  if (plan === null) return undefined
  return run.output >= plan.unitsPerWindow ? 'good' : 'bad'
}
/** warnings of a run's end, which the sentences of a single run tell */
const OF_ENDS = new Set(['warning-gridlock', 'warning-products'])

function cellsOf(story: Omit<RunsStory, 'cells'>, replications: number): readonly Cell[] {
  const details = countCells(story).filter((cell) => cell !== story.stations && (replications > 1 || cell !== story.distribution))
  return [
    story.answer,
    ...(story.promise === null ? [] : [story.promise]),
    ...story.warnings,
    ...(story.standstill === null ? [] : [story.standstill]),
    sectionCell('section-stations', 'Where the time of the stations goes'),
    story.stations,
    story.sure,
    ...(story.limits === null ? [] : [story.limits]),
    sectionCell('section-places', 'Where carriers are, and when units are made'),
    ...details,
    story.sweep,
    ...(story.data.length === 0 ? [story.units] : story.data),
    ...standingCells(story),
  ]
}

/** The circle of waiting zones, drawn; nothing where the run went on to its end or no circle is there. */
function standstillCell({ line }: Scenario, single: RunResult | null): ChartCell | null {
  const standstill = single === null ? null : standstillOf(line, single.end)
  if (standstill === null || standstill.circle.length < 2) return null
  const zones = line.zones.map(({ name }, zone) => ({
    name,
    station: line.stations.find((station) => station.zone === zone)?.title ?? null,
  }))
  return { ...chartCell('standstill', waitingCircle(standstill, zones, single!.end.atSeconds!)), pageOnly: true }
}

/** Runs of one count are a sweep of that count alone. */
function asSweep({ count, intervals: _, ...result }: RunsResult): SweepResult {
  const counts = [count]
  return { ...result, kind: 'carrier sweep', counts, answer: sweepAnswer(counts, count.carriers), planAnswer: planAnswer(counts) }
}
