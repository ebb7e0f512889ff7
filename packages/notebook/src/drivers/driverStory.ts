/** The story of a driver study, as cells: what limits the line, ranked, and what its waiting points at. */
import { decimalsFor, drivers, formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { DriverResult } from '@loopwright/study'
import { type AnswerCell, type ChartCell, oneView, type TableCell } from '../cell.ts'
import { chartCell } from '../chartCell.ts'
import { differenceWords } from '../compare/compareWords.ts'
import { type Period, period } from '../sweep/period.ts'

export interface DriverStory {
  readonly answer: AnswerCell
  /** ranked bars; null without a driver */
  readonly chart: ChartCell | null
  /** all drivers, the largest first; on the page the chart shows the same numbers */
  readonly table: TableCell
  /** blocked and starved shares of the stations: the explanation, no verdict */
  readonly waiting: TableCell
}

/** @param id  begins the ids of the cells */
export function driverStory(scenario: Scenario, result: DriverResult, id = 'drivers'): DriverStory {
  const words = period(scenario)
  const table = (name: string, content: Table): TableCell => ({
    kind: 'table',
    id: `${id}-${name}`,
    where: 'both',
    views: oneView(content),
  })
  return {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: [...limitSentences(result, words), ...candidateSentences(scenario, result), ...carrierSentences(result, words)],
      sure: sureSentences(result),
    },
    chart: result.drivers.length === 0 ? null : chartCell(`${id}-chart`, drivers(result, { per: words.one })),
    table: { ...table('table', driversTable(result, words)), where: 'terminal' },
    waiting: table('waiting', waitingTable(scenario, result, words)),
  }
}

/** "What limits the line: S6 Tightness test. 5 % less of it brings 9.8 units a shift." */
export function limitSentences({ drivers, limits, step }: DriverResult, period: Period): string[] {
  if (drivers.length === 0) return ['No answer yet: what limits the line needs at least 2 replications.']
  const found = limits.map((index) => drivers[index]!)
  const first = found[0]
  if (first === undefined) return ['No time of the line is shown to limit its output.']
  const gain = `${formatShare(step)} less of it brings ${units(first.unitsOfStep)} units ${period.each}`
  if (found.length === 1) return [`What limits the line most is ${first.name}: ${gain}.`]
  const names = found.map(({ name }) => name)
  return [
    `What limits the line most cannot be told apart yet among ${names.slice(0, -1).join(', ')} and ${names.at(-1)!}. Of ${first.name}, ${gain}.`,
  ]
}

/** Where the waiting of stations points elsewhere, both are said. */
function candidateSentences({ line }: Scenario, { explanation, drivers, limits }: DriverResult): string[] {
  const candidate = explanation?.candidate ?? null
  if (candidate === null || limits.length === 0) return []
  const { name, title } = line.stations[candidate]!
  const called = name === title ? name : `${name} ${title}`
  return limits.some((index) => drivers[index]!.station === candidate)
    ? [`The waiting of the stations points at the same place: those before ${called} are blocked, those after it starve.`]
    : [`The waiting of the stations points at ${called}. Where the two disagree, trust the gain: it was simulated.`]
}

function carrierSentences({ oneCarrierMore, oneCarrierLess }: DriverResult, { each }: Period): string[] {
  const say = (word: string, difference: DriverResult['oneCarrierMore']): string[] => {
    if (difference === null) return []
    const { size, low, high } = differenceWords(difference)
    if (difference.status === 'no difference shown') return [`One carrier ${word}: no difference shown (${low} to ${high} units ${each}).`]
    if (difference.mean === 0) return [`One carrier ${word} changes nothing.`]
    return [`One carrier ${word} ${difference.mean > 0 ? 'brings' : 'costs'} ${size} units ${each}.`]
  }
  return [[...say('more', oneCarrierMore), ...say('less', oneCarrierLess)].join(' ')].filter((text) => text !== '')
}

function sureSentences({ drivers, replications, step }: DriverResult): string[] {
  if (drivers.length === 0) return []
  return [
    `Each driver was changed by ${formatShare(step)} down and up in ${replications} random worlds, the same for all; one interval each, 95 %. More replications narrow them.`,
  ]
}

function driversTable({ drivers, limits, step }: DriverResult, { one }: Period): Table {
  return {
    caption: 'What drives the output, the largest gain first',
    columns: [
      { head: 'Driver', align: 'left', pageOnly: false },
      { head: 'Better is', align: 'left', pageOnly: false },
      { head: `Units per ${one}\nof ${formatShare(step)} better`, align: 'right', pageOnly: false },
      { head: '% more output\nof 1 % better', align: 'right', pageOnly: false },
    ],
    rows: drivers.map(({ name, lessIsBetter, unitsOfStep, elasticity }, index) => ({
      cells: [
        name,
        lessIsBetter ? 'less' : 'more',
        units(unitsOfStep),
        formatWithHalfWidth(elasticity.mean, elasticity.halfWidth, Math.max(2, decimalsFor(elasticity.halfWidth, 3))),
      ],
      marked: limits.includes(index),
    })),
    note: 'Marked: what limits the line; several where their intervals overlap.',
  }
}

function waitingTable({ line }: Scenario, { explanation }: DriverResult, { one }: Period): Table {
  return {
    caption: `Share of the ${one} in which a station could not let go of its carrier, or had none`,
    columns: [
      { head: 'Station', align: 'left', pageOnly: false },
      { head: 'Blocked', align: 'right', pageOnly: false },
      { head: 'Starved', align: 'right', pageOnly: false },
    ],
    rows: (explanation?.stations ?? []).map(({ station, blockedShare, starvedShare }) => {
      const { name, title } = line.stations[station]!
      return {
        cells: [name === title ? name : `${name} ${title}`, formatShare(blockedShare), formatShare(starvedShare)],
        marked: station === explanation?.candidate,
      }
    }),
    note: 'In the order of flow. Marked: where blocked stations before meet starved stations after.',
  }
}

const units = (value: number): string => formatNumber(value, 1)
