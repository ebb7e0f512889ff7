import { findSteadyState, type SteadyResult } from '@loopwright/study'
import { steadyDocument } from '../documents/steadyDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import { openStore, tellStore } from '../keptRuns.ts'
import { progress } from '../shell/progress.ts'
import { Misuse, type Shell } from '../shell/shell.ts'
import { refused, type StudyFlags } from '../studyCommand.ts'
import { storyOptions, tell } from '../output/tell.ts'
import { threadsOf } from '../threads.ts'
import { checkOutputs } from '../output/writeTables.ts'

/** How long the line takes to forget its start, and what it makes from then on. */
export async function steady(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line } = source.scenario
  if (replications < 2) throw new Misuse('a steady state needs at least 2 replications: one run says nothing about chance')
  await checkOutputs(shell, flags)
  const told = progress(shell, `how long the start shows, ${replications} long runs, seed ${seed}`, replications)
  const store = await openStore(shell, flags)
  const options = { seed, signal: shell.signal, onProgress: told.onProgress, store, ...threadsOf(flags, shell) }
  const result: SteadyResult = await refused(shell, () => findSteadyState(line, { replications }, options))
  const partial = result.status === 'stopped'
  told.end(partial)
  tellStore(shell, store)
  return await tell(shell, flags, {
    partial,
    document: () => steadyDocument(source, result),
    tale: ({ seedWords, simulatedCell, steadyStory }) => {
      const { question, cells } = steadyStory(source.scenario, result, storyOptions(source, { partial }))
      const run = simulatedCell('simulated', source.scenario, source.file, { ...result, partial }, '')
      return { question, cells: [...cells, { ...run, sentence: `${replications} long runs simulated, ${seedWords(seed)}.` }] }
    },
    name: source.scenario.name,
    command,
  })
}
