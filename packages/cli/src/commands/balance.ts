import { formatNumber, formatShare, type Table } from '@loopwright/charts'
import type { Cell } from '@loopwright/notebook'
import { type BalanceResult, type TaskToShare, taskBalance } from '@loopwright/study'
import { tasksOfCsv, tasksOfLine } from '../balanceTasks.ts'
import { balanceDocument } from '../documents/balanceDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import { DONE, Misuse, type Shell } from '../shell.ts'

export interface BalanceFlags {
  readonly cycle?: number
  readonly stations?: number
  readonly before?: readonly string[]
  readonly json?: true
  /** file for the page */
  readonly out?: string
}

/** Shares tasks among stations, exactly, on average times. */
export async function balance(shell: Shell, file: string, flags: BalanceFlags, command: string): Promise<number> {
  const { cycle, stations } = flags
  if (flags.out !== undefined) await shell.checkWritable(flags.out)
  if ((cycle === undefined) === (stations === undefined))
    throw new Misuse('balance takes --cycle or --stations: the one is given, the other is found')
  const tasks = await tasksOf(shell, file, flags.before ?? [])
  const result = shared(tasks, cycle === undefined ? { stations: stations! } : { cycleSeconds: cycle })
  if (flags.json === true) shell.out.write(`${JSON.stringify(balanceDocument(file, result), null, 2)}\n`)
  if (flags.json === true && flags.out === undefined) return DONE
  const cells = await balanceCells(result, cycle !== undefined)
  const { USE } = await import('../studyCells.ts')
  if (flags.json !== true) (await import('../cells.ts')).showCells(shell, cells)
  if (flags.out === undefined) return DONE
  const { writePage } = await import('@loopwright/notebook')
  const question = cycle === undefined ? `What cycle can ${stations} stations do?` : `How few stations can do ${formatNumber(cycle, 2)} s?`
  await shell.writeFile(flags.out, await writePage({ question, scenarioName: file, date: shell.today(), command }, [...cells, USE]))
  const says = flags.json === true ? shell.err : shell.out
  says.write(`${flags.json === true ? '' : '\n'}Page: ${flags.out}\n`)
  return DONE
}

async function balanceCells(result: BalanceResult, cycleGiven: boolean): Promise<Cell[]> {
  const { prose, tableCell } = await import('../studyCells.ts')
  const count = `${result.stations.length} ${result.stations.length === 1 ? 'station' : 'stations'}`
  const seconds = `${formatNumber(result.cycleSeconds, 2)} s`
  const answer = cycleGiven
    ? `${count} can do it at ${seconds}, on average times; fewer cannot.`
    : `${count} can do it in ${seconds} at best, on average times.`
  return [
    { kind: 'answer', id: 'answer', sentences: [answer], sure: [] },
    tableCell('stations', table(result)),
    prose('sure', [
      `Stations stand idle for ${formatShare(result.lossShare)} of the cycle. Scatter, carriers and exchange times decide the rest: simulate it.`,
    ]),
  ]
}

async function tasksOf(shell: Shell, file: string, rules: readonly string[]): Promise<TaskToShare[]> {
  if (!file.toLowerCase().endsWith('.csv')) return tasksOfLine((await loadScenario(shell, file)).scenario.line, rules)
  if (rules.length > 0) throw new Misuse('--before is for scenarios; in a table the column "after" says what comes before')
  return tasksOfCsv(await shell.readFile(file), file)
}

function shared(tasks: readonly TaskToShare[], request: Parameters<typeof taskBalance>[1]): BalanceResult {
  try {
    return taskBalance(tasks, request)
  } catch (error) {
    if (error instanceof RangeError || (error instanceof Error && error.name === 'StatisticsError')) throw new Misuse(error.message)
    throw error
  }
}

function table({ stations, cycleSeconds }: BalanceResult): Table {
  return {
    caption: 'Tasks by station',
    columns: [
      { head: 'Station', align: 'right', pageOnly: false },
      { head: 'Work, s', align: 'right', pageOnly: false },
      { head: 'Idle, s', align: 'right', pageOnly: false },
      { head: 'Tasks', align: 'left', pageOnly: false },
    ],
    rows: stations.map(({ tasks, seconds }, index) => ({
      cells: [`${index + 1}`, formatNumber(seconds, 2), formatNumber(cycleSeconds - seconds, 2), tasks.join(', ').slice(0, 48)],
      marked: false,
    })),
    note: 'One of the groupings that do it; release and exchange of carriers are no part of it.',
  }
}
