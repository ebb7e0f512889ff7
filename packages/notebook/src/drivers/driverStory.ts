/** The story of a driver study, as cells: what limits the line, what each time is worth, and where stations wait. */
import { drivers, gainText } from '@loopwright/charts'
import {
  capital,
  differenceParts,
  fieldName,
  formatNumber,
  formatShare,
  formatWithHalfWidth,
  percent,
  roundedParts,
  type Table,
  tableOf,
  wordColumn,
} from '@loopwright/charts/table'
import { listWords, stationWords } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import type { DriverResult } from '@loopwright/study'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type Cell,
  type ChartCell,
  type SureCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import { openChartCell } from '../cells/chartCell.ts'
import { levelWords } from '../compare/compareWords.ts'
import { limitName } from '../limits/limitWords.ts'
import { diagnosisSentences } from '../limits/diagnosisWords.ts'
import { wholeChangeName, wholeChangeSentence, wholeChangeTable } from '../limits/wholeChangeWords.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { figureOf, moreFigure } from '../sweep/answerFigures.ts'
import { intervalsCaution } from '../words/intervalWords.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'
import { endWarnings } from '../words/endWarnings.ts'
import { stoppedEarly } from '../words/stoppedEarly.ts'
import type { StudyStoryOptions } from '../words/storyOptions.ts'

/** The tale of what drives the output, and its parts by name. */
export interface DriverStory extends Standing, Tale {
  readonly answer: AnswerCell
  readonly sure: SureCell
  /** said only where it holds */
  readonly warnings: readonly CautionCell[]
  /** ranked bars with the table of all drivers; null without a driver */
  readonly chart: ChartCell | null
  /** one operator, carrier or repair crew more or fewer; null where there is none */
  readonly wholes: TableCell | null
  /** what the stations wait for, and what each points at; null below 2 replications or stations */
  readonly waiting: TableCell | null
}

/**
 * The story's parts, by name.
 *
 * @example driverStory(scenario, await findDrivers(scenario.line, { replications: 2 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'What limits the loop?'
 */
export function driverStory(scenario: Scenario, result: DriverResult, options: StudyStoryOptions): DriverStory {
  const { id = 'drivers' } = options
  const words = period(scenario)
  const wholes = wholeChangeTable(result.wholeChanges, words)
  const parts = {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: driverSentences(scenario, result, words),
      figures: driverFigures(result, words),
    } satisfies AnswerCell,
    warnings: [
      ...stoppedEarly(id, result, result.base?.n ?? 0, words),
      ...endWarnings(id, { line: scenario.line, runs: result.base?.n ?? 0, ...result }, 'effects', words),
      ...scenarioWarnings(scenario, options),
      ...lengthWarning(scenario),
    ],
    chart: result.drivers.length === 0 ? null : { ...openChartCell(`${id}-ranking`, drivers(result, { per: words.one })), lead: true },
    sure: { kind: 'sure', id: `${id}-sure`, sentences: sureSentences(scenario, result, words) } satisfies SureCell,
    wholes: wholes === null ? null : tableCell(`${id}-wholes`, wholes),
    waiting: result.explanation === null ? null : tableCell(`${id}-waiting`, waitingTable(scenario, result, words)),
    ...standing(scenario, options),
  }
  const { answer, warnings, chart, sure, wholes: table, waiting } = parts
  const shown: readonly (Cell | null)[] = [answer, ...warnings, chart, table, sure, waiting]
  return {
    ...parts,
    question: `What limits the ${words.line}?`,
    cells: [...shown.filter((cell) => cell !== null), ...standingCells(parts)],
  }
}

/** What limits the line and why, then what one more or fewer of anything else does. */
function driverSentences({ line }: Scenario, { diagnosis, wholeChanges }: DriverResult, words: Period): string[] {
  if (diagnosis === null) return [`No answer yet: what limits the ${words.line} needs at least 2 simulated ${words.many}.`]
  const told = diagnosis.evidence.flatMap((one) => (one.source === 'one more' ? [one.effect] : []))
  const others = wholeChanges.filter(
    (change) => !told.some(({ kind, step, operator }) => change.kind === kind && change.step === step && change.operator === operator),
  )
  return [...diagnosisSentences(diagnosis, line, words), ...restSentences(others, words)]
}

/** What limits the line, the time that counts most, and what one whole more brings. */
function driverFigures({ diagnosis, drivers: all, wholeChanges, base }: DriverResult, { each }: Period): AnswerFigure[] {
  if (diagnosis === null || base === null) return []
  const [first] = all.filter(({ elasticity }) => elasticity.low > 0)
  const [most] = wholeChanges
    .filter(({ difference: { mean, status } }) => mean > 0 && status !== 'no difference shown')
    .toSorted((a, b) => b.difference.mean - a.difference.mean)
  return [
    ...(diagnosis.limitedBy === null ? [] : [{ label: 'Limited by', value: limitName(diagnosis.limitedBy), sure: '' }]),
    ...(first === undefined
      ? []
      : [{ label: `1 % ${first.lessIsBetter ? 'less' : 'more'} of ${first.name}`, value: `+${gainText(first)}`, sure: 'output' }]),
    ...(most === undefined ? [] : [moreFigure(capital(wholeChangeName(most)), differenceParts(most.difference), `units ${each}`)]),
    figureOf('As it stands', roundedParts(base.mean, base.halfWidth), `units ${each}`),
  ]
}

/** Those that are shown to do something one by one, the others together: the table has their intervals. */
function restSentences(effects: DriverResult['wholeChanges'], { each }: Period): string[] {
  const isOpen = ({ difference: { status } }: (typeof effects)[number]): boolean => status === 'no difference shown'
  const shown = effects.filter((effect) => !isOpen(effect) && effect.difference.mean !== 0)
  const idle = effects.filter((effect) => !isOpen(effect) && effect.difference.mean === 0)
  const open = effects.filter(isOpen)
  return [
    ...(shown.length === 0 ? [] : [`${capital(shown.map((effect) => wholeChangeSentence(effect, each)).join('; '))}.`]),
    ...(idle.length === 0 ? [] : [`${capital(listWords(idle.map(wholeChangeName)))} ${idle.length === 1 ? 'changes' : 'change'} nothing.`]),
    ...(open.length === 0 ? [] : [`No difference is shown yet for ${listWords(open.map(wholeChangeName))}.`]),
  ]
}

function sureSentences(scenario: Scenario, { drivers, base, step, wholeChanges }: DriverResult, { each, many, line }: Period): string[] {
  const [first] = drivers
  if (first === undefined || base === null) return []
  const { n, level } = first.elasticity
  const random =
    base.halfWidth > 0 ||
    [...drivers.map(({ elasticity }) => elasticity), ...wholeChanges.map(({ difference }) => difference)].some(
      ({ halfWidth }) => halfWidth > 0,
    )
  const made = formatWithHalfWidth(base.mean, base.halfWidth)
  return [
    `As it stands the ${line} makes ${made} units ${each}. Each driver was changed by ${formatShare(step)} down and up in the same ${formatNumber(n, 0)} simulated ${many}, all else as it was; ${random ? `the intervals are at ${levelWords(level)} each, and more simulated ${many} narrow them.${intervalsCaution(n, [base], many)}` : 'every one of them makes the same, so that there are no intervals.'}`,
    'These are effects of small changes: where a limit is moved far, the next one takes its place.',
    startSentence(scenario),
  ]
}

/** states in which a station waits; the last two stand in the table even where they are 0 */
const WAITING = ['waiting for operator', 'waiting for product', 'waiting for receiver', 'stopped', 'blocked', 'starved'] as const
const HEADS: Readonly<Record<string, string>> = {
  'waiting for operator': 'waits for\noperator',
  'waiting for product': 'waits for\nproduct',
  'waiting for receiver': 'waits for\nreceiver',
}

function waitingTable({ line }: Scenario, { explanation }: DriverResult, { one }: Period): Table {
  const stations = explanation?.stations ?? []
  const arrows = explanation?.arrows?.arrows ?? []
  type Row = (typeof stations)[number]
  const named = ({ station }: Row) => line.stations[station]!
  const share = ({ shares }: Row, state: (typeof WAITING)[number]): number => shares[state]
  const kept = WAITING.filter((state) => state === 'blocked' || state === 'starved' || stations.some((row) => share(row, state) >= 0.0005))
  const pointsAt = (place: number): string =>
    arrows
      .filter(([from]) => from === place)
      .map(([, to]) => named(stations[to]!).name)
      .join(', ')
  const points = wordColumn<Row>('Points at', 'points_at', 'the neighbour that holds the station up; empty: none', (_, place) =>
    pointsAt(place),
  )
  return tableOf<Row>({
    caption: `What stations wait for, in the order of flow, % of the ${one}`,
    columns: [
      {
        head: 'Station',
        align: 'left',
        text: (row) => stationWords(named(row)),
        data: [
          ['station', 'name of the station', (row) => named(row).name],
          ['title', 'title of the station', (row) => named(row).title],
        ],
      },
      ...kept.map((state) => ({
        head: HEADS[state] ?? state,
        text: (row: Row) => percent(share(row, state)),
        data: [[fieldName(state), `share of the ${one}, 0 … 1, in the state "${state}"`, (row: Row) => share(row, state)] as const],
      })),
      ...(explanation?.arrows == null ? [] : [points]),
    ],
    rows: stations,
    marked: ({ station }) => station === explanation?.candidate,
    note: `Blocked: done, but no room ahead for the carrier. Starved: free, but no carrier comes.${explanation?.arrows == null ? '' : ' A station points at the neighbour that holds it up.'}`,
  })
}
