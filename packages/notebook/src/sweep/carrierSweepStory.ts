/** The story of a carrier sweep, as cells: the same in a notebook and in the page of a sweep. */
import { workingSeconds } from '@loopwright/line/bounds'
import {
  type Figure as ChartFigure,
  outputByHour,
  statesIn,
  stationTimes,
  stoppedTime,
  throughput,
  unitsSpread,
  zoneOccupancy,
} from '@loopwright/charts'
import { dataColumn, tableOf } from '@loopwright/charts/table'
import { type CarrierStudy, mostCarriers, type SweepCount, type SweepResult } from '@loopwright/study'
import { withCarriers } from '@loopwright/study/change'
import type { Scenario } from '@loopwright/scenario'
import {
  type AnswerCell,
  type CautionCell,
  type Cell,
  type ChartCell,
  type ChoiceCell,
  type DataCell,
  oneView,
  type PlanCell,
  type ProseCell,
  sectionCell,
  type SureCell,
  type SweepCell,
  type Views,
} from '../cells/cell.ts'
import { chartFigure } from '../cells/chartCell.ts'
import type { Figure } from '../cells/figure.ts'
import { sharedAxes } from './sharedAxes.ts'
import { promiseCell } from '../forecast/promiseCell.ts'
import { usualShiftsPerWeek } from '../forecast/weeks.ts'
import { limitedBy } from '../limits/limitedBy.ts'
import { liveCurve } from '../live/liveCurve.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { stopCauses } from '../study/stopCauses.ts'
import { namedCount, sweepFigures } from './answerFigures.ts'
import { answerSentences, oneCountSentences, sureSentences } from './answerWords.ts'
import { warnings } from './cautions.ts'
import { period } from './period.ts'
import { occupancyPlan } from './plan.ts'
import { studySentences, studySureSentences } from './studyWords.ts'
import { sweepCell } from './sweepCell.ts'
import type { Tale } from '../cells/tale.ts'
import { toldCount } from '../words/controlWords.ts'
import { questionFor } from '../words/questionWords.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'
import type { StoryOptions } from '../words/storyOptions.ts'

/** The tale of a carrier sweep, and its parts by name. */
export interface CarrierSweepStory extends Standing, Tale {
  /** what was simulated: seed, replications, version, hash */
  readonly sweep: SweepCell
  readonly answer: AnswerCell
  /** said only where it holds: partial results, gridlock, a best count at the upper end */
  readonly warnings: readonly CautionCell[]
  /** the curve, and the numbers of each count */
  readonly throughput: ChartCell
  readonly sure: SureCell
  /** what limits the line with the count that is shown, and why; null: nothing to tell from */
  readonly limits: ProseCell | null
  /** what may be promised with that count, per shift and week: stands with the answer; null: nothing yet */
  readonly promise: ProseCell | null
  /** the carrier count that the cells after it show */
  readonly choice: ChoiceCell
  readonly stations: ChartCell
  readonly plan: PlanCell
  readonly occupancy: ChartCell
  readonly byHour: ChartCell
  readonly distribution: ChartCell
  readonly stops: ChartCell
  /** output of each replication */
  readonly units: DataCell
}

/** what a study that gave up says */
const AT_MOST = 'A higher `--at-most` lets it run on.'

/** id of the choice that switches the count */
const CHOICE = 'carriers'

/**
 * The story's parts, by name, and all of them in the order of the page.
 *
 * @throws RangeError  if no count has a replication: there is nothing to tell
 * @example carrierSweepStory(scenario, await sweepCarriers(scenario.line, { counts: [3, 4], replications: 3 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'How many carriers does the loop need?'
 */
export function carrierSweepStory(scenario: Scenario, of: SweepResult | CarrierStudy, options: StoryOptions): CarrierSweepStory {
  const study = of.kind === 'carrier study' ? of : null
  const result: SweepResult = { ...of, kind: 'carrier sweep', counts: of.counts.map((count) => toldCount(count, options.plain)) }
  const told = result.counts.filter((count) => count.replications > 0)
  if (told.length === 0) throw new RangeError('a sweep without a single replication has no story to tell')
  const words = period(scenario)
  const named = namedCount(result)
  const shown = named ?? result.answer?.best ?? told[0]!.carriers
  const figures = sweepFigures(result, words)
  const windowWords = {
    per: words.one,
    windowSeconds: result.window.endSeconds - result.window.warmupSeconds,
    netSeconds: workingSeconds(scenario.line),
    plan: words.plan,
  }
  const states = statesIn(told)
  const axes = sharedAxes(scenario, told, options.notes?.shiftStarts ?? [])
  const answered = told.find(({ carriers }) => carriers === shown)!
  const ghostOf = (count: SweepCount): { readonly ghost?: SweepCount } => (count === answered ? {} : { ghost: answered })
  const places = scenario.line.zones.map((zone, index) => ({
    station: scenario.line.stations.find((station) => station.zone === index)?.title ?? null,
    transfer: zone.transfer !== null,
  }))
  const views = (figure: (count: SweepCount) => Figure, counts = told): Views<Figure> => ({
    choice: CHOICE,
    shown: String(shown),
    of: counts.map((count) => ({ key: String(count.carriers), content: figure(count) })),
  })
  const chart = (id: string, figure: (count: SweepCount) => ChartFigure): ChartCell => ({
    kind: 'chart',
    id,
    pageOnly: true,
    views: views((count) => chartFigure(figure(count))),
  })
  const curve = throughput(result, { per: words.one, choice: CHOICE, named })
  const sentences =
    told.length === 1 && result.counts.length === 1 && (told[0]!.replications >= 2 || !result.chance)
      ? oneCountSentences(told[0]!, words)
      : [...answerSentences(result, words, ...(study === null ? [] : [AT_MOST])), ...(study === null ? [] : studySentences(study, words))]
  const parts = {
    sweep: sweepCell(scenario, of, options.scenarioFile),
    answer: { kind: 'answer', id: 'answer', sentences, ...toneOf(result, told), figures } satisfies AnswerCell,
    warnings: [
      ...warnings(result, words, scenario.line, mostCarriers(scenario.line)),
      ...scenarioWarnings({ ...scenario, line: withCarriers(scenario.line, shown) }, options),
      ...lengthWarning(
        scenario,
        told.every(({ gridlocks, replications }) => gridlocks === replications),
      ),
    ],
    throughput: {
      kind: 'chart',
      id: 'counts',
      lead: true,
      views: oneView({ ...chartFigure(curve), tableOpen: true }),
      curve: liveCurve(told, curve, { per: words.one, choice: CHOICE, named }),
    } satisfies ChartCell,
    sure: {
      kind: 'sure',
      id: 'sure',
      sentences: [
        ...(study === null ? [] : studySureSentences(study, words)),
        ...sureSentences(result, shown, words),
        startSentence(scenario),
      ],
    } satisfies SureCell,
    limits: limitedBy(scenario, answered, words),
    promise: promiseCell(answered, words, usualShiftsPerWeek(options.notes)),
    choice: {
      kind: 'choice',
      id: CHOICE,
      legend: `Carriers on the ${words.line}`,
      options: told.map(({ carriers }) => ({ key: String(carriers), label: String(carriers) })),
      shown: String(shown),
    } satisfies ChoiceCell,
    stations: chart('stations', (count) => stationTimes(count, { ...windowWords, states })),
    plan: {
      kind: 'plan',
      id: 'plan',
      pageOnly: true,
      // of a study that was stopped no page is made, and drawings of long lines take their time
      views: views((count) => occupancyPlan(scenario, count, words), of.partial ? [answered] : told),
    } satisfies PlanCell,
    occupancy: chart('zones', (count) => zoneOccupancy(count, { ...windowWords, places })),
    byHour: chart('hours', (count) => outputByHour(count, { ...windowWords, ...axes.hours, ...ghostOf(count) })),
    distribution: chart('spread', (count) => unitsSpread(count, { ...windowWords, ...axes.spread, ...ghostOf(count) })),
    stops: chart('stops', (count) =>
      stoppedTime({ ...count, stoppedBy: stopCauses(scenario, count.stoppedBy) }, { ...windowWords, ...axes.stops }),
    ),
    units: { kind: 'data', id: 'units', table: unitsTable(told, words.one) } satisfies DataCell,
    ...standing(scenario, options),
  }
  return { ...parts, question: questionFor('carriers', scenario, words.line), cells: cellsOf(parts) }
}

type Parts = Omit<CarrierSweepStory, 'question' | 'cells'>

/** All cells of the story, in the order of the page. */
function cellsOf(story: Parts): readonly Cell[] {
  return [
    story.answer,
    ...(story.promise === null ? [] : [story.promise]),
    ...story.warnings,
    sectionCell('section-counts', 'Output by number of carriers'),
    story.throughput,
    story.sure,
    ...(story.limits === null ? [] : [story.limits]),
    sectionCell('section-count', 'A closer look at one count'),
    story.choice,
    ...countCells(story),
    story.sweep,
    story.units,
    ...standingCells(story),
  ]
}

/** What tells of one count. */
export function countCells(
  story: Pick<Parts, 'stations' | 'plan' | 'occupancy' | 'byHour' | 'distribution' | 'stops'>,
): (ChartCell | PlanCell)[] {
  return [story.stations, story.plan, story.occupancy, story.byHour, story.distribution, story.stops]
}

/** What a terminal may show by colour: the plan met or missed by every count tried, a standstill of the one. */
function toneOf({ planAnswer }: SweepResult, told: readonly SweepCount[]): Pick<AnswerCell, 'tone'> {
  if (told.length === 1 && told[0]!.gridlocks > 0) return { tone: 'bad' }
  if (planAnswer === null) return {}
  if (planAnswer.carriers !== null) return { tone: 'good' }
  return planAnswer.counts.every(({ verdict }) => verdict === 'not met') ? { tone: 'bad' } : {}
}

function unitsTable(counts: readonly SweepCount[], per: string) {
  const rows = counts.flatMap(({ carriers, units }) => units.map((made, replication) => ({ carriers, replication, made })))
  type Row = (typeof rows)[number]
  return tableOf<Row>({
    caption: `Units of each replication`,
    columns: [
      dataColumn('carriers', 'number of carriers', ({ carriers }) => carriers),
      dataColumn(
        'replication',
        'number of the replication, from 0; the same number is the same simulated chance for every count',
        ({ replication }) => replication,
      ),
      dataColumn('units', `units made in the ${per}`, ({ made }) => made),
    ],
    rows,
  })
}
