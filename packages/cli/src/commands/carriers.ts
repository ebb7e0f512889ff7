import { studyStage } from '@loopwright/notebook'
import { type CarriersProgress, chooseCarriers, defaultCounts, type StudyOptions } from '@loopwright/study'
import { withCarriers } from '@loopwright/study/change'
import { carriersDocument } from '../documents/carriersDocument.ts'
import { openStore, type StoreFlags, tellStore } from '../keptRuns.ts'
import { loadScenario } from '../loadScenario.ts'
import { progress } from '../shell/progress.ts'
import { refusals, type Shell } from '../shell/shell.ts'
import { refused } from '../studyCommand.ts'
import { type OutputFlags, storyOptions, tell } from '../output/tell.ts'
import { type ThreadFlags, threadsOf } from '../threads.ts'
import { checkOutputs } from '../output/writeTables.ts'

export interface CarriersFlags extends OutputFlags, StoreFlags, ThreadFlags {
  readonly carriers?: readonly number[]
  /** percent */
  readonly within: number
  /** percent */
  readonly level: number
  /** most per count */
  readonly replications?: number
  readonly seed: string
}

/** How many carriers the loop needs: as many runs as the answer takes. */
export async function carriers(shell: Shell, file: string, flags: CarriersFlags, command: string): Promise<number> {
  const source = await loadScenario(shell, file, flags.variation)
  const { line, plan } = source.scenario
  const { seed, replications } = flags
  const counts = refusals(() => flags.carriers ?? defaultCounts(line))
  for (const count of counts.toReversed()) refusals(() => withCarriers(line, count))
  await checkOutputs(shell, flags)
  const told = progress(shell, studyStage({ deciding: 'best', from: counts[0]!, to: counts.at(-1)! }), 0)
  const store = await openStore(shell, flags)
  const request = {
    counts,
    within: flags.within / 100,
    level: flags.level / 100,
    plan: plan?.unitsPerWindow ?? null,
    ...(replications === undefined ? {} : { replicationsMax: replications }),
  }
  const options: StudyOptions<CarriersProgress> = {
    seed,
    store,
    signal: shell.signal,
    onProgress: (now) => told.onProgress({ ...now, what: studyStage(now) }),
    ...threadsOf(flags, shell),
  }
  const study = await refused(shell, () => chooseCarriers(line, request, options))
  told.end(study.partial)
  tellStore(shell, store)
  return await tell(shell, flags, {
    partial: study.partial,
    document: () => carriersDocument(source, study),
    tale: ({ carrierSweepStory, emptyTale }) => {
      if (study.counts.every((count) => count.replications === 0))
        return emptyTale('Stopped before the first run was done: nothing to tell.')
      return carrierSweepStory(source.scenario, study, storyOptions(source, { ...flags, partial: study.partial }))
    },
    name: source.scenario.name,
    command,
  })
}
