/** The story of a stretch of one run, as cells: where each carrier was, and who waited where. */
import { timeline, type TimelinePause } from '@loopwright/charts'
import { formatDuration, formatStretch } from '@loopwright/charts/table'
import type { CarrierStay } from '@loopwright/study'
import type { Scenario, ShiftStart } from '@loopwright/scenario'
import type { AnswerCell, CautionCell, ChartCell, PlanCell, SureCell } from '../cells/cell.ts'
import { chartCell } from '../cells/chartCell.ts'
import { carriersPlan } from './carriersPlan.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { shortNumber } from '../inputs/quantityWords.ts'
import { period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { clockText } from '../words/clockWords.ts'
import type { StoryOptions } from '../words/storyOptions.ts'

/** The tale of a stretch of a run, and its parts by name. */
export interface TraceStory extends Standing, Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  /** zones over time */
  readonly timeline: ChartCell
  /** who is where as the stretch begins */
  readonly plan: PlanCell
  readonly sure: SureCell
}

/** Which stretch of a run is told; seconds. */
export interface TraceStoryOptions extends StoryOptions {
  /** the stretch that is shown, seconds from the start of the run */
  readonly fromSeconds: number
  readonly toSeconds: number
  /** of the run, for the clock times of the day. Default: none */
  readonly shiftStarts?: readonly ShiftStart[]
  /** stops and breaks of the run, see `tracePauses`. Default: none known */
  readonly pauses?: readonly TimelinePause[]
}

/**
 * The story's parts, by name.
 *
 * @param stays  of the carriers to be shown, over the whole run
 * @throws RangeError  if the stretch has no length
 * @example traceStory(scenario, carrierStays((await traceRun(scenario.line, { replication: 0 }, { seed: '1', workers: 0 })).trace, scenario.line), { scenarioFile: 'ring.yaml', fromSeconds: 7200, toSeconds: 8100 }).question // => 'What happened on the loop from 2 h to 2 h 15 min of the run?'
 */
export function traceStory(scenario: Scenario, stays: readonly CarrierStay[], options: TraceStoryOptions): TraceStory {
  const { fromSeconds, toSeconds, shiftStarts = [] } = options
  const { line: noun, one } = period(scenario)
  const stretch = stretchWords(fromSeconds, toSeconds, shiftStarts)
  const { zones, stations } = scenario.line
  const figure = timeline(stays, {
    zones: zones.map(({ name }) => name),
    places: zones.map((_, zone) => stations.find((station) => station.zone === zone)?.title ?? ''),
    fromSeconds,
    toSeconds,
    stretch,
    pauses: options.pauses ?? [],
    ...(shiftStarts.length === 0 ? {} : { clock: (seconds: number) => clockText(shiftStarts, seconds) }),
  })
  const run = `${formatStretch(fromSeconds, toSeconds)} from the start of the run`
  const when = shiftStarts.length === 0 ? run : `${stretch} (${run})`
  const parts = {
    answer: { kind: 'answer', id: 'trace-answer', sentences: [figure.finding] } satisfies AnswerCell,
    warnings: scenarioWarnings(scenario, options),
    timeline: {
      ...chartCell('trace-timeline', { ...figure, finding: `Zones over time, ${when}: one line for each carrier.` }),
      lead: true,
    },
    plan: carriersPlan(scenario, stays, fromSeconds, clockText(shiftStarts, fromSeconds) ?? `${formatDuration(fromSeconds)} of the run`),
    sure: {
      kind: 'sure',
      id: 'trace-sure',
      sentences: [
        `One run is one ${one} that may happen, not a forecast; another replication (--replication 1, 2 …) shows another.`,
        `Every event of this stretch: \`loopwright trace ${options.scenarioFile} --from "${shortNumber(fromSeconds / 60)} min" --to "${shortNumber(toSeconds / 60)} min"\`.`,
      ],
    } satisfies SureCell,
    ...standing(scenario, options),
  }
  const { answer, warnings, sure } = parts
  return {
    ...parts,
    question: `What happened on the ${noun} from ${stretch}${shiftStarts.length === 0 ? ' of the run' : ''}?`,
    cells: [answer, ...warnings, parts.timeline, sure, parts.plan, ...standingCells(parts)],
  }
}

/** On the clock of the day where there is a calendar, "08:00 to 08:15"; else on that of the run, "60 min to 75 min". */
export function stretchWords(fromSeconds: number, toSeconds: number, shiftStarts: readonly ShiftStart[]): string {
  const [from, to] = [clockText(shiftStarts, fromSeconds), clockText(shiftStarts, toSeconds, true)]
  return from === null || to === null ? formatStretch(fromSeconds, toSeconds) : `${from} to ${to}`
}
