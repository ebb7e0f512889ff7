/** What a study of drivers tells, in sentences. */
import { drivers as driversFigure, formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import type { LineSpec } from '@loopwright/line'
import type { DriverResult } from '@loopwright/study'
import { stationName } from './stationTable.ts'

/** places of drivers that are told in the terminal */
const TOLD_MAX = 12

/** What limits the line, and what the carriers would bring. */
export function driverSentences(result: DriverResult, per: string): string[] {
  if (result.drivers.length === 0) return ['Stopped before two replications of each were done: nothing to tell.']
  const { finding } = driversFigure(result, { per })
  return [finding, ...carrierSentence(result, per)]
}

function carrierSentence({ oneCarrierMore: more, oneCarrierLess: less, carriers }: DriverResult, per: string): string[] {
  const brings = (difference: DriverResult['oneCarrierMore']): string | null => {
    if (difference === null) return null
    if (difference.status === 'identical in every replication') return 'changes nothing'
    if (difference.status === 'no difference shown') return 'shows no difference'
    return `${difference.mean > 0 ? 'brings' : 'costs'} ${formatWithHalfWidth(Math.abs(difference.mean), difference.halfWidth, 1)} units a ${per}`
  }
  const [up, down] = [brings(more), brings(less)]
  const parts = [...(up === null ? [] : [`one carrier more than ${carriers} ${up}`]), ...(down === null ? [] : [`one less ${down}`])]
  if (parts.length === 0) return []
  const text = parts.join(', ')
  return [`${text[0]!.toUpperCase()}${text.slice(1)}.`]
}

/** What explains it: shares, arrows, the law; and what to make of it where they disagree with the drivers. */
export function explanationSentences(result: DriverResult, line: LineSpec): string[] {
  const { explanation, law, lawTerms, limits, drivers } = result
  const called = (station: number): string => stationName(line.stations[station]!.name, line.stations[station]!.title)
  const constraint = law === null || law.constraintStation === null ? null : called(law.constraintStation)
  const regime =
    lawTerms === null
      ? 'The line is no single closed loop, for which a law would tell what limits it.'
      : `By its law the loop is ${lawTerms.regime} with ${result.carriers} carriers${constraint === null ? '' : `; the slowest exchange is at ${constraint}`}.`
  const limit = drivers[limits[0] ?? -1]
  if (explanation === null || limit === undefined) return [regime]
  const { candidate } = explanation
  const pointed = candidate === null ? [] : [`Blocked and starved times point at ${called(candidate)} (an explanation, no verdict).`]
  const named = limits.map((index) => drivers[index]!.station)
  const agree = candidate === null || named.includes(candidate)
  const advice = agree
    ? 'Both say the same.'
    : limit.station === null
      ? `The two disagree: ${limit.name} is no station, so that no station waits for it. Trust the runs: what was changed there changed the output.`
      : `The two disagree: the runs say ${limit.name}. Trust the runs, which changed the times and saw the output change; shares only tell where carriers queue, and in a loop they queue round the corner. Try a change at both with \`loopwright compare\`.`
  return [regime, ...pointed, advice, ...overall(explanation)]
}

function overall({ stations }: NonNullable<DriverResult['explanation']>): string[] {
  const mean = (of: 'blockedShare' | 'starvedShare'): number => stations.reduce((sum, each) => sum + each[of], 0) / stations.length
  const [blocked, starved] = [mean('blockedShare'), mean('starvedShare')]
  if (starved > 3 * blocked && starved > 0.2) return ['Stations are starved rather than blocked: too few carriers is a first suspicion.']
  if (blocked > 3 * starved && blocked > 0.2)
    return ['Stations are blocked rather than starved: too many carriers, or too little room, is a first suspicion.']
  return []
}

export function driverSure({ drivers, base }: DriverResult, per: string): string[] {
  const [first] = drivers
  if (first === undefined || base === null) return []
  const { n, level } = first.elasticity
  return [
    `Each change met the same ${n} random worlds as the line as it is (${formatWithHalfWidth(base.mean, base.halfWidth)} units a ${per}); intervals are at ${formatShare(level)} each. More replications narrow them.`,
    'These are effects of small changes: a limit that is moved far gives way to the next one.',
  ]
}

/** The first places of the ranking; names shortened to keep to 80 columns. */
export function driverTable(result: DriverResult, per: string): Table {
  const { table } = driversFigure(result, { per })
  const rest = table.rows.length - TOLD_MAX
  return {
    ...table,
    rows: table.rows.slice(0, TOLD_MAX).map(({ cells, marked }) => ({ cells: [cells[0]!.slice(0, 38), ...cells.slice(1)], marked })),
    note: `${table.note}${rest > 0 ? ` ${rest} smaller ones are left out here.` : ''}`,
  }
}

/** Blocked and starved shares, in the order of flow. */
export function sharesTable(result: DriverResult, line: LineSpec): Table | null {
  const { explanation } = result
  if (explanation === null) return null
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const { arrows } = explanation.arrows
  return {
    caption: 'Where stations wait, in the order of flow',
    columns: [
      { head: 'Station', align: 'left', pageOnly: false },
      right('Blocked, %'),
      right('Starved, %'),
      { head: 'Points at', align: 'left', pageOnly: false },
    ],
    rows: explanation.stations.map(({ station, blockedShare, starvedShare }, place) => ({
      cells: [
        stationName(line.stations[station]!.name, line.stations[station]!.title),
        formatNumber(blockedShare * 100, 1),
        formatNumber(starvedShare * 100, 1),
        arrows
          .filter(([from]) => from === place)
          .map(([, to]) => line.stations[explanation.stations[to]!.station]!.name)
          .join(', '),
      ],
      marked: station === explanation.candidate,
    })),
    note: 'A station points at the neighbour that holds it up; one that points at none is where the arrows end.',
  }
}
