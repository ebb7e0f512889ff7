/** The story of a balance, as cells: tasks shared among stations by mean times. Nothing is run. */
import { formatNumber, formatShare, type Table, tableOf, timeScale, type TimeScale, wordColumn } from '@loopwright/charts/table'
import type { BalanceRequest, BalanceResult, TaskToShare } from '@loopwright/study/change'
import type { Problem } from '@loopwright/scenario'
import { stationLoads } from '@loopwright/charts'
import { chartCell } from '../cells/chartCell.ts'
import { type AnswerCell, type CautionCell, type ChartCell, sectionCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import { problemWarnings } from '../study/standing.ts'
import { USE } from '../sweep/cautions.ts'
import type { Tale } from '../cells/tale.ts'
import { counted } from '../words/countedWords.ts'

/** The tale of tasks shared among stations, and its parts by name. */
export interface BalanceStory extends Tale {
  readonly answer: AnswerCell
  /** of the scenario that the tasks come from */
  readonly warnings: readonly CautionCell[]
  /** work of each station against the cycle, drawn */
  readonly chart: ChartCell
  /** work, idle time and tasks of each station */
  readonly stations: TableCell
  readonly sure: SureCell
  /** every task with its time, what comes before it, and its station */
  readonly tasks: TableCell
}

/** How the tale of a balance is told. */
export interface BalanceStoryOptions {
  /** warnings about the scenario that the tasks come from. Default: none */
  readonly problems?: readonly Problem[]
}

/**
 * The story's parts, by name.
 *
 * @param asked  what was given: the cycle, or the number of stations
 * @example balanceStory([{ name: 'wiring', seconds: 40, after: [] }], taskBalance([{ name: 'wiring', seconds: 40, after: [] }], { stations: 1 }), { stations: 1 }).question // => 'What cycle can 1 station keep?'
 */
export function balanceStory(
  tasks: readonly TaskToShare[],
  result: BalanceResult,
  asked: BalanceRequest,
  { problems = [] }: BalanceStoryOptions = {},
): BalanceStory {
  const { unit, text } = scaleOf(tasks, result)
  const cycleGiven = 'cycleSeconds' in asked
  const parts = {
    answer: {
      kind: 'answer',
      id: 'balance-answer',
      sentences: [answerSentence(tasks, result, cycleGiven, { unit, text }), ...spareStations(result, asked)],
      figures: [
        { label: 'Stations', value: formatNumber(result.stations.length, 0), sure: cycleGiven ? 'fewer cannot' : '' },
        { label: 'Cycle', value: `${text(result.cycleSeconds)} ${unit}`, sure: cycleGiven ? 'as asked for' : 'no shorter one' },
        { label: 'Idle', value: formatShare(result.lossShare), sure: 'of the cycle' },
      ],
    } satisfies AnswerCell,
    warnings: problemWarnings({ scenarioFile: '', problems }),
    chart: { ...chartCell('balance-loads', loadsChart(tasks, result, text)), pageOnly: true, lead: true },
    stations: tableCell('balance-stations', stationTable(result, { unit, text })),
    sure: {
      kind: 'sure',
      id: 'balance-sure',
      sentences: [
        `${result.stations.length === 1 ? 'The station is' : 'The stations are'} idle for ${formatShare(result.lossShare)} of the cycle. Mean times alone decide here: scatter, stops and the exchange of carriers come on top, so simulate the line with this sharing.`,
      ],
    } satisfies SureCell,
    tasks: { ...tableCell('balance-tasks', taskTable(tasks, result, { unit, text })), pageOnly: true },
  }
  const { answer, warnings, stations, sure } = parts
  const cycle = `${text(result.cycleSeconds)} ${unit}`
  return {
    ...parts,
    question: cycleGiven ? `How few stations can keep a cycle of ${cycle}?` : `What cycle can ${counted(asked.stations, 'station')} keep?`,
    cells: [
      answer,
      ...warnings,
      sectionCell('balance-section', 'What each station does'),
      parts.chart,
      stations,
      sure,
      sectionCell('balance-section-tasks', 'The tasks as read'),
      parts.tasks,
      sectionCell('section-cautions', 'Cautions'),
      USE,
    ],
  }
}

function loadsChart(tasks: readonly TaskToShare[], { stations, cycleSeconds }: BalanceResult, text: SecondsWords) {
  const secondsOf = new Map(tasks.map(({ name, seconds }) => [name, seconds]))
  const loads = stations.map((station, index) => ({
    name: `Station ${index + 1}`,
    tasks: station.tasks.map((name) => ({ name, seconds: secondsOf.get(name) ?? 0 })),
  }))
  return stationLoads(loads, cycleSeconds, text)
}

type SecondsWords = (seconds: number) => string

type Scale = Pick<TimeScale, 'unit' | 'text'>

/** All times of the page in one unit, with the decimals that the finest of them needs, at most two. */
function scaleOf(tasks: readonly TaskToShare[], { cycleSeconds, stations }: BalanceResult): Scale {
  const all = [cycleSeconds, ...tasks.map(({ seconds }) => seconds), ...stations.map(({ seconds }) => seconds)]
  const decimals = [0, 1].find((digits) => all.every((value) => Math.abs(value - Number(value.toFixed(digits))) < 0.005)) ?? 2
  return timeScale(all, decimals)
}

function answerSentence(
  tasks: readonly TaskToShare[],
  { stations, cycleSeconds }: BalanceResult,
  cycleGiven: boolean,
  { unit, text }: Scale,
): string {
  const [count, all, cycle] = [counted(stations.length, 'station'), counted(tasks.length, 'task'), `${text(cycleSeconds)} ${unit}`]
  if (stations.length === 1 && tasks.length === 1) return `One station needs a cycle of ${cycle} for the one task, by mean times.`
  if (!cycleGiven && stations.length === 1) return `One station needs a cycle of ${cycle} for the ${all}, by mean times.`
  if (!cycleGiven) return `${count} can share the ${all} in a cycle of ${cycle} by mean times, and no shorter one.`
  return `${count} can share the ${all} in a cycle of ${cycle} by mean times${stations.length === 1 ? '' : '; fewer cannot'}.`
}

/** Where fewer stations than asked for keep the same cycle. */
function spareStations({ stations }: BalanceResult, asked: BalanceRequest): string[] {
  if ('cycleSeconds' in asked || asked.stations <= stations.length) return []
  const enough = stations.length === 1 ? '1 is' : `${stations.length} are`
  return [
    `Of the ${asked.stations} stations asked for, ${enough} enough: no task is split, so that with all ${asked.stations} the cycle is no shorter.`,
  ]
}

interface StationRow {
  readonly number: number
  readonly tasks: readonly string[]
  readonly seconds: number
  readonly idle: number
}

function stationTable({ stations, cycleSeconds }: BalanceResult, { unit, text }: Scale): Table {
  return tableOf<StationRow>({
    caption: 'Tasks by station',
    columns: [
      {
        head: 'Station',
        text: ({ number }) => `${number}`,
        data: [['station', 'number of the station, in the order of flow', ({ number }) => number]],
      },
      {
        head: `Work, ${unit}`,
        text: ({ seconds }) => text(seconds),
        data: [['work_s', 'seconds of work, mean', ({ seconds }) => seconds]],
      },
      {
        head: `Idle, ${unit}`,
        text: ({ idle }) => text(idle),
        data: [['idle_s', 'seconds of the cycle that are left', ({ idle }) => idle]],
      },
      wordColumn('Tasks', 'tasks', 'names, in an order that keeps the rules', ({ tasks }) => tasks.join(', ')),
    ],
    rows: stations.map(({ tasks, seconds }, index) => ({ number: index + 1, tasks, seconds, idle: cycleSeconds - seconds })),
    note: 'One of the groupings that do it; release and exchange of carriers are no part of it.',
  })
}

function taskTable(tasks: readonly TaskToShare[], { stations }: BalanceResult, { unit, text }: Scale): Table {
  const stationOf = (name: string): number => stations.findIndex((station) => station.tasks.includes(name)) + 1
  return tableOf<TaskToShare>({
    caption: 'Tasks as read',
    columns: [
      wordColumn('Task', 'task', 'name', ({ name }) => name),
      { head: `Mean, ${unit}`, text: ({ seconds }) => text(seconds), data: [['mean_s', 'seconds, mean', ({ seconds }) => seconds]] },
      wordColumn('Comes after', 'after', 'tasks that must come before it', ({ after }) => after.join(', ')),
      {
        head: 'Station',
        text: ({ name }) => `${stationOf(name)}`,
        data: [['station', 'number of its station', ({ name }) => stationOf(name)]],
      },
    ],
    rows: tasks,
  })
}
