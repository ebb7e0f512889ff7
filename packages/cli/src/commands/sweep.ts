import { defaultCounts, sweepCarriers, type SweepOptions } from '@loopwright/study'
import { withCarriers } from '@loopwright/study/change'
import { sweepDocument } from '../documents/sweepDocument.ts'
import { openStore, type StoreFlags, tellStore } from '../keptRuns.ts'
import { loadScenario } from '../loadScenario.ts'
import { progress } from '../shell/progress.ts'
import { refusals, type Shell } from '../shell/shell.ts'
import { refused } from '../studyCommand.ts'
import { type OutputFlags, storyOptions, tell } from '../output/tell.ts'
import { type ThreadFlags, threadsOf } from '../threads.ts'
import { firstWords } from '../words/firstWords.ts'
import { checkOutputs } from '../output/writeTables.ts'

export interface SweepFlags extends OutputFlags, StoreFlags, ThreadFlags {
  readonly carriers?: readonly number[]
  readonly replications: number
  readonly seed: string
}

/** How many carriers: the sweep, its answer, and the page. */
export async function sweep(shell: Shell, file: string, flags: SweepFlags, command: string): Promise<number> {
  const source = await loadScenario(shell, file, flags.variation)
  const { line, plan } = source.scenario
  const { replications, seed } = flags
  const counts = refusals(() => flags.carriers ?? defaultCounts(line))
  for (const count of [...counts].reverse()) refusals(() => withCarriers(line, count))
  await checkOutputs(shell, flags)
  const told = progress(
    shell,
    `carriers ${counts[0]} to ${counts.at(-1)}, ${replications} replications each, seed ${seed}`,
    counts.length * replications,
  )
  const store = await openStore(shell, flags)
  const request = { counts, replications, plan: plan?.unitsPerWindow ?? null }
  const options: SweepOptions = {
    seed,
    store,
    signal: shell.signal,
    onFirst: (first) => told.say(firstWords(first)),
    onProgress: (now) => told.onProgress({ ...now, what: `carriers ${counts[0]} to ${counts.at(-1)}` }),
    ...threadsOf(flags, shell),
  }
  const result = await refused(shell, () => sweepCarriers(line, request, options))
  told.end(result.partial)
  tellStore(shell, store)
  return await tell(shell, flags, {
    partial: result.partial,
    document: () => sweepDocument(source, result),
    tale: ({ carrierSweepStory, emptyTale }) => {
      if (result.counts.every((count) => count.replications === 0))
        return emptyTale('Stopped before the first run was done: nothing to tell.')
      return carrierSweepStory(source.scenario, result, storyOptions(source, { ...flags, partial: result.partial }))
    },
    name: source.scenario.name,
    command,
  })
}
