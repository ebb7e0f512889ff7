import type { Problem } from '@loopwright/scenario'
import { type BalanceRequest, taskBalance, type TaskToShare } from '@loopwright/study/change'
import { tasksOfCsv, tasksOfLine } from '../options/balanceTasks.ts'
import { balanceDocument } from '../documents/balanceDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import { Misuse, refusals, type Shell, unlessStopped } from '../shell/shell.ts'
import { type OutputFlags, tell } from '../output/tell.ts'
import { checkOutputs } from '../output/writeTables.ts'

export interface BalanceFlags extends Omit<OutputFlags, 'variation'> {
  readonly cycle?: number
  readonly stations?: number
  readonly before?: readonly string[]
}

/** Shares tasks among stations, exactly, on average times. */
export async function balance(shell: Shell, file: string, flags: BalanceFlags, command: string): Promise<number> {
  const { cycle, stations } = flags
  await checkOutputs(shell, flags)
  if ((cycle === undefined) === (stations === undefined))
    throw new Misuse('balance takes --cycle or --stations: the one is given, the other is found')
  const { tasks, name, problems } = await tasksOf(shell, file, flags.before ?? [])
  const asked: BalanceRequest = cycle === undefined ? { stations: stations! } : { cycleSeconds: cycle }
  const result = await unlessStopped(shell, 'the tasks were shared: nothing is known', () => refusals(() => taskBalance(tasks, asked)))
  const { balanceStory } = await import('@loopwright/notebook/data')
  return await tell(shell, flags, {
    partial: false,
    document: () => balanceDocument(file, result),
    tale: () => balanceStory(tasks, result, asked, { problems }),
    name,
    command,
  })
}

interface Read {
  readonly tasks: readonly TaskToShare[]
  /** of the scenario; of a table the file */
  readonly name: string
  readonly problems: readonly Problem[]
}

async function tasksOf(shell: Shell, file: string, rules: readonly string[]): Promise<Read> {
  if (!file.toLowerCase().endsWith('.csv')) {
    const { scenario, problems } = await loadScenario(shell, file)
    return { tasks: tasksOfLine(scenario.line, rules, file), name: scenario.name, problems }
  }
  if (rules.length > 0) throw new Misuse('--before is for scenarios; in a table the column "after" says what comes before')
  return { tasks: tasksOfCsv(await shell.readFile(file), file), name: file, problems: [] }
}
