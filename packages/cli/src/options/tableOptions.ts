/** Options of commands that read tables of the shop floor. */
import { InvalidArgumentError, type Option } from 'commander'
import { fileName } from './arguments.ts'
import { option } from './options.ts'

/** How a table is read, where it cannot be known from the table. */
export interface TableFlags {
  readonly sheet?: string
  readonly columns?: Readonly<Record<string, string>>
  readonly unit?: 's' | 'min' | 'h' | 'cmin' | 'ms'
  readonly decimal?: 'point' | 'comma'
  readonly clock?: 'm:ss' | 'h:mm'
  readonly dates?: 'dmy' | 'mdy'
}

export const tableOptions = (roles: string): Option[] => [
  option('--sheet <name>', 'sheet of a workbook (default: the first visible one that is not empty)'),
  option('--columns <heads>', `which column is what, such as "${roles}"`, columnNames),
  option('--unit <unit>', 'of numbers under a head without one').choices(['s', 'min', 'h', 'cmin', 'ms']),
  option('--decimal <sign>', 'what stands before decimals, where the table leaves it open').choices(['point', 'comma']),
  option('--clock <form>', 'what 1:05 means').choices(['m:ss', 'h:mm']),
  option('--dates <order>', 'which comes first in 03/11/2026').choices(['dmy', 'mdy']),
]

export const writeOption = (what: string): Option => option('--write <file>', what, fileName)

/**
 * Heads by what the columns are for.
 *
 * @example columnNames('time=Net time, task=Step') // => { time: 'Net time', task: 'Step' }
 */
export function columnNames(text: string): Record<string, string> {
  const found: Record<string, string> = {}
  for (const part of text.split(/[,;]/)) {
    const match = /^\s*([a-z]+)\s*=\s*(.+?)\s*$/i.exec(part)
    if (match === null) throw new InvalidArgumentError('Write what a column is for and its head, such as "time=Seconds, task=Step".')
    found[match[1]!.toLowerCase()] = match[2]!
  }
  return found
}

/**
 * A share in per cent, or named: `10 %`, `12.5`.
 *
 * @param least  in per cent
 * @param most   in per cent
 * @example sharePercent(0, 60)('12 %') // => 0.12
 */
export const sharePercent =
  (least: number, most: number) =>
  (text: string): number => {
    const value = Number(text.replace(/\s*%$/, '').replace(',', '.'))
    if (text.trim() === '' || !(value >= least && value <= most))
      throw new InvalidArgumentError(`Write per cent from ${least} to ${most}, such as "10 %".`)
    return value / 100
  }

/** Times by task: `wire=30, seal=12.5`; seconds. */
export function shortestTimes(text: string): Record<string, number> {
  const found: Record<string, number> = {}
  for (const part of text.split(',')) {
    const match = /^\s*(.+?)\s*=\s*(\d+(?:\.\d+)?)\s*s?\s*$/.exec(part)
    if (match === null) throw new InvalidArgumentError('Write tasks with seconds, such as "wire=30, seal=12.5".')
    found[match[1]!] = Number(match[2])
  }
  return found
}

/** How the tables of a folder of data are read and judged. */
export const dataOptions = (): Option[] => [
  ...tableOptions('').filter(({ long }) => long !== '--sheet' && long !== '--columns'),
  option('--allowance <percent>', 'added to the times; then say where breaks are counted', sharePercent(0, 60)),
  option('--allowance-of <what>', 'what the allowance is a share of (default: work)').choices(['work', 'shift']),
  option('--breaks <where>', 'breaks are in the calendar of the scenario, or in the allowance').choices(['calendar', 'allowance']),
  option('--keep-values', 'simulate the measured values, not curves'),
  option('--from <day>', 'the stop log begins here (default: its first start)'),
  option('--to <day>', 'and ends here (default: its last instant)'),
  option('--hours <hours>', 'when the line worked during the log, such as "Mon-Thu 06:00-22:00, Fri 06:00-14:00"'),
]
