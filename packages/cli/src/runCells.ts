/** Runs of one line as cells: the answer, where the stations' time goes, and on the page the pictures of a sweep of this one count. */

import { waitingCircle } from '@loopwright/charts'
import type { RunResult } from '@loopwright/line'
import { type AnswerCell, type Cell, carrierSweepStory, oneView, type TableCell } from '@loopwright/notebook'
import type { Scenario } from '@loopwright/scenario'
import { type RunsResult, type SweepResult, standstillOf, sweepAnswer } from '@loopwright/study'
import type { Shown } from './cells.ts'
import type { Loaded } from './loadScenario.ts'
import { chartCell } from './studyCells.ts'
import { ONE_RUN, runSentences, windowWords } from './words/runWords.ts'
import { lengthWarning, startSentence } from './words/startWords.ts'
import { stationTable } from './words/stationTable.ts'

/** @param single  the run, where there is only one */
export function runCells({ file, scenario }: Loaded, result: RunsResult, single: RunResult | null): Shown {
  const { count } = result
  if (count.replications === 0) return { terminal: [nothing()], page: [nothing()] }
  const story = carrierSweepStory(scenario, asSweep(result), { scenarioFile: file })
  const start = [startSentence(scenario), lengthWarning(scenario)].filter((sentence) => sentence !== null)
  const answer: AnswerCell =
    single === null
      ? { ...story.answer, sentences: story.answer.sentences.slice(0, 1), sure: [...story.answer.sure, ...start] }
      : { kind: 'answer', id: 'answer', sentences: runSentences(scenario, single), sure: [ONE_RUN, ...start] }
  const table: TableCell = {
    kind: 'table',
    id: 'station-table',
    where: 'terminal',
    views: oneView(stationTable(count, windowWords(scenario))),
  }
  const sure: Cell = { kind: 'prose', id: 'sure', markdown: answer.sure.join('\n\n') }
  const spread = count.replications > 1 ? [story.distribution] : []
  return {
    terminal: [answer, table, sure, ...story.warnings],
    page: [
      story.sweep,
      answer,
      ...story.warnings,
      ...standstillCells(scenario, single),
      story.choice,
      story.stations,
      table,
      story.plan,
      story.occupancy,
      story.byHour,
      ...spread,
      story.stops,
      ...story.assumptions,
      ...story.cautions,
    ],
  }
}

/** The circle of waiting zones, drawn; nothing where the run went on to its end or no circle is there. */
function standstillCells({ line }: Scenario, single: RunResult | null): Cell[] {
  const standstill = single === null ? null : standstillOf(line, single.end)
  if (standstill === null || standstill.circle.length < 2) return []
  const zones = line.zones.map(({ name }, zone) => ({
    name,
    station: line.stations.find((station) => station.zone === zone)?.title ?? null,
  }))
  return [chartCell('standstill', waitingCircle(standstill, zones, single!.end.atSeconds!))]
}

const nothing = (): AnswerCell => ({
  kind: 'answer',
  id: 'answer',
  sentences: ['Stopped before the first run was done: nothing to tell.'],
  sure: [],
})

/** Runs of one count are a sweep of that count alone. */
function asSweep({ count, intervals: _, ...result }: RunsResult): SweepResult {
  return { ...result, kind: 'carrier sweep', counts: [count], answer: sweepAnswer([count], count.carriers) }
}
