/** The story of a stop log, as cells: how often what stands, for how long, and how available each place was. Nothing is run. */
import { formatDuration, formatNumber, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { instantText, type PlaceTime, type StopLog, type StopStudy, type StopTimes } from '@loopwright/measure'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type Cell,
  type ProseCell,
  proseCell,
  type SureCell,
  type TableCell,
  tableCell,
  warningCell,
} from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { readCell, readWarnings, refusedCells } from '../times/accountCells.ts'
import { counted } from '../words/countedWords.ts'
import { listLines } from '../words/listLines.ts'

/** The tale of a stop log, and its parts by name. */
export interface StopLogStory extends Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  /** by place and cause: time between, repair, what is simulated */
  readonly stops: TableCell
  /** availability of each place, with its interval */
  readonly places: TableCell
  readonly sure: SureCell
  readonly read: ProseCell
  readonly refused: readonly TableCell[]
}

const NAMED = 6

/**
 * The story's parts, by name.
 *
 * @param logs  as read
 * @throws RangeError  without a stop
 * @example stopLogStory([], stopStudy([{ place: 'S3', cause: 'tool', start: 3600, end: 3900, line: 2 }], { from: 0, to: 36000 })).question // => 'How often does what stand, and for how long?'
 */
export function stopLogStory(logs: readonly StopLog[], study: StopStudy): StopLogStory {
  if (study.times.length === 0) throw new RangeError('a stop log needs at least one stop')
  const parts = {
    answer: {
      kind: 'answer',
      id: 'stoplog-answer',
      sentences: answerSentences(study),
      figures: stopLogFigures(study),
    } satisfies AnswerCell,
    warnings: [...readWarnings('stoplog', logs), ...stopWarnings(study)],
    stops: tableCell('stoplog-stops', stopTable(study.times)),
    places: tableCell('stoplog-places', placeTable(study.places)),
    sure: { kind: 'sure', id: 'stoplog-sure', sentences: sureSentences(study) } satisfies SureCell,
    read: readCell('stoplog', logs),
    refused: refusedCells('stoplog', logs),
  }
  const cells: Cell[] = [
    parts.answer,
    ...parts.warnings,
    parts.places,
    parts.stops,
    parts.sure,
    proseCell('section-read', '## What was read'),
    parts.read,
    ...parts.refused,
    USE,
  ]
  return { ...parts, question: 'How often does what stand, and for how long?', cells }
}

const nameOf = ({ place, cause, short }: StopTimes): string =>
  `${[place, cause].filter((word) => word !== '').join(', ')}${short ? ' (short)' : ''}`
const availabilityWords = (share: number): string => `${formatNumber(100 * share, 1)} %`

const stopsIn = ({ times }: StopStudy): number => times.reduce((sum, { n }) => sum + n, 0)
const worstOf = ({ places }: StopStudy): StopStudy['places'][number] =>
  places.reduce((low, one) => (one.availability < low.availability ? one : low))

function stopLogFigures(study: StopStudy): AnswerFigure[] {
  const { place, availability, low, high } = worstOf(study)
  return [
    {
      label: `Available: ${place}`,
      value: availabilityWords(availability),
      sure: low === null ? 'of the time' : `${availabilityWords(low)} to ${availabilityWords(high!)} in the long run`,
    },
    { label: 'Stops', value: formatNumber(stopsIn(study), 0), sure: 'in the log' },
  ]
}

function answerSentences(study: StopStudy): string[] {
  const { from, to } = study
  const stops = stopsIn(study)
  const worst = worstOf(study)
  const range = worst.low === null ? '' : `, ${availabilityWords(worst.low)} to ${availabilityWords(worst.high!)} in the long run (95 %)`
  return [
    `${counted(stops, 'stop')} from ${instantText(from)} to ${instantText(to)}; least available was ${worst.place}: ${availabilityWords(worst.availability)} of the time${range}.`,
  ]
}

function stopWarnings({ times, overlaps, outside, endsGuessed }: StopStudy): CautionCell[] {
  const few = times.filter(({ standsIn }) => standsIn !== '').map((one) => `${nameOf(one)}: ${one.standsIn}.`)
  const open = times.filter((one) => one.open > 0).map((one) => `${nameOf(one)}: ${one.open}.`)
  return [
    ...(endsGuessed
      ? [
          warningCell(
            'stoplog-ends',
            'When the log began and ended',
            'It was not said, so the log is taken from its first start to its last instant; quiet time before and after would make stops rarer. Say it (`--from`, `--to`).',
          ),
        ]
      : []),
    ...(overlaps.length === 0
      ? []
      : [
          warningCell(
            'stoplog-overlaps',
            'Stops that lie over each other',
            `${listLines(
              overlaps.map(({ place, lines: [a, b] }) => `${place}: lines ${a} and ${b}.`),
              NAMED,
            )}\n\nTime stood is counted once; of one cause they count as one stop.`,
          ),
        ]),
    ...(outside.length === 0
      ? []
      : [
          warningCell(
            'stoplog-outside',
            'Stops while the line does not work',
            `${listLines(
              outside.map(({ place, line }) => `${place}: line ${line}.`),
              NAMED,
            )}\n\nThey lie wholly outside the working hours (\`--hours\`), so they do not count. If the line worked then, mend the hours.`,
          ),
        ]),
    ...(open.length === 0
      ? []
      : [
          warningCell(
            'stoplog-open',
            'Not over when the log ended',
            `${listLines(open, NAMED)}\n\nThey count as stops, and their repair with what it has lasted so far.`,
          ),
        ]),
    ...(few.length === 0 ? [] : [warningCell('stoplog-few', 'Too few to tell', listLines(few, NAMED))]),
  ]
}

function sureSentences({ clock }: StopStudy): string[] {
  return [
    `Time between stops runs on the ${clock} clock${clock === 'operating' ? ': hours in which the line does not work, and in which the place stands, are taken out' : ': it runs on while the place stands'}. Mean time between: that time over the number of stops, its 95 % interval by the count (exact, Poisson); the end of the log cuts no stop off that way.`,
    'Availability in the long run: 1/(1 + repair/between), its interval by the F distribution (exponential time between, repair like a gamma).',
  ]
}

const minutes = (seconds: number): string => formatDuration(Math.round(seconds < 600 ? seconds : 60 * Math.round(seconds / 60)))

function stopTable(times: readonly StopTimes[]): Table {
  return tableOf<StopTimes>({
    caption: 'Stops by place and cause',
    columns: [
      wordColumn('Place', 'place', 'where, as logged', ({ place }) => place),
      wordColumn('Cause', 'cause', 'why, as logged', ({ cause, short }) => `${cause}${short ? ' (short)' : ''}`),
      { head: 'Stops', text: ({ n }) => formatNumber(n, 0), data: [['n', 'stops that began within the log', ({ n }) => n]] },
      {
        head: 'Between',
        text: ({ between }) => (between === null ? '–' : minutes(between)),
        data: [
          ['between_s', 'mean time between stops, seconds of the clock that runs; empty: none', ({ between }) => between],
          ['between_low_s', 'lower limit of its 95 % interval', ({ betweenLow }) => betweenLow],
          ['between_high_s', 'upper limit; empty: nothing bounds it', ({ betweenHigh }) => betweenHigh],
          ['exposure_s', 'seconds that the clock ran', ({ exposure }) => exposure],
        ],
      },
      {
        head: '95 % from … to',
        text: ({ betweenLow, betweenHigh }) => `${minutes(betweenLow)} … ${betweenHigh === null ? 'open' : minutes(betweenHigh)}`,
        data: [],
      },
      {
        head: 'Repair',
        text: ({ repair }) => (repair === null ? '–' : minutes(repair)),
        data: [
          ['repair_s', 'mean repair, seconds; empty: none is over', ({ repair }) => repair],
          ['open', 'not over when the log ended', ({ open }) => open],
        ],
      },
      wordColumn('Simulated', 'simulated', 'measured, or what stands in', ({ standsIn }) =>
        standsIn === '' ? 'as measured' : 'see above',
      ),
    ],
    rows: times,
    note: 'Short: stops below five minutes (common practice), told apart.',
  })
}

function placeTable(places: readonly PlaceTime[]): Table {
  return tableOf<PlaceTime>({
    caption: 'Availability by place',
    columns: [
      wordColumn('Place', 'place', 'where, as logged', ({ place }) => place),
      {
        head: 'Stood',
        text: ({ down }) => minutes(down),
        data: [
          ['down_s', 'seconds that it stood, overlaps once', ({ down }) => down],
          ['log_s', 'seconds of the log in which the line works', ({ seconds }) => seconds],
        ],
      },
      {
        head: 'Available',
        text: ({ availability }) => availabilityWords(availability),
        data: [['availability', 'share of the time, 0 … 1', ({ availability }) => availability]],
      },
      {
        head: 'In the long run, 95 %',
        text: ({ low, high }) => (low === null ? 'too few stops' : `${availabilityWords(low)} to ${availabilityWords(high!)}`),
        data: [
          ['availability_low', 'lower limit of its 95 % interval; empty: too few stops', ({ low }) => low],
          ['availability_high', 'upper limit', ({ high }) => high],
        ],
      },
    ],
    rows: places,
  })
}
