import { replicate, runMany, runsResult, traceRun } from '@loopwright/study'
import { runDocument } from '../documents/runDocument.ts'
import { runsDocument } from '../documents/runsDocument.ts'
import { traceEvents } from '../documents/traceEvents.ts'
import { openStore, type StoreFlags, tellStore } from '../keptRuns.ts'
import { loadScenario } from '../loadScenario.ts'
import { progress } from '../shell/progress.ts'
import { Misuse, type Shell } from '../shell/shell.ts'
import { refused } from '../studyCommand.ts'
import { type OutputFlags, storyOptions, tell } from '../output/tell.ts'
import { type ThreadFlags, threadsOf } from '../threads.ts'
import { checkOutputs } from '../output/writeTables.ts'

export interface RunFlags extends OutputFlags, StoreFlags, ThreadFlags {
  readonly replications: number
  readonly seed: string
  readonly trace?: true
}

/** The line as it stands: one run in full, or means over several. */
export async function run(shell: Shell, file: string, flags: RunFlags, command: string): Promise<number> {
  const { replications, seed, trace } = flags
  if (trace === true && replications > 1) throw new Misuse('--trace tells the events of one run; leave out --replications, or ask for 1')
  if (trace === true && flags.json !== true && flags.csv === undefined)
    throw new Misuse('--trace adds the events to --json or --csv; give one of them')
  if (trace === true && flags.engine === 'recursion')
    throw new Misuse('--trace tells events, which only the event engine has; leave out --engine')
  const source = await loadScenario(shell, file, flags.variation)
  const { line, plan } = source.scenario
  await checkOutputs(shell, flags)
  const worlds = replications === 1 ? '1 replication' : `${replications} replications`
  const told = progress(shell, `${line.carriers.count} carriers, ${worlds}, seed ${seed}`, replications)
  const { signal } = shell
  const store = await openStore(shell, flags)
  const traced = trace === true ? await refused(shell, () => traceRun(line, { replication: 0 }, { seed, signal })) : null
  const threads = { onProgress: told.onProgress, ...threadsOf(flags, shell) }
  const asked = { replications, plan: plan?.unitsPerWindow ?? null }
  const options = { seed, signal, store, ...threads }
  const single =
    replications > 1 ? undefined : trace === true ? traced?.run : (await refused(shell, () => replicate(line, asked, options)))[0]
  if (traced !== null) told.onProgress({ done: 1, total: 1 })
  const result =
    replications > 1
      ? await refused(shell, () => runMany(line, asked, options))
      : runsResult(line, single === undefined ? [] : [single], { seed, ...asked })
  told.end(result.partial)
  tellStore(shell, store)
  const events = traced === null ? null : traceEvents(traced.trace, line)
  const eventCells = events === null ? [] : [(await import('../documents/eventsCell.ts')).eventsCell(events)]
  return await tell(shell, flags, {
    partial: result.partial,
    document: () => (single === undefined ? runsDocument(source, result) : runDocument(source, single, { law: result.law, trace: events })),
    tale: ({ emptyTale, runsStory }) => {
      if (result.count.replications === 0) return emptyTale('Stopped before the first run was done: nothing to tell.')
      const { question, cells } = runsStory(
        source.scenario,
        result,
        single ?? null,
        storyOptions(source, { ...flags, partial: result.partial }),
      )
      return { question, cells: [...cells, ...eventCells] }
    },
    name: source.scenario.name,
    command,
  })
}
