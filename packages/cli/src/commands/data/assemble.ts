import type { CompareResult } from '@loopwright/study/compare'
import { assembled } from '../../assembled.ts'
import type { DataFlags } from '../../dataFolder.ts'
import { assembleDocument } from '../../documents/data/assembleDocument.ts'
import { openStore, tellStore } from '../../keptRuns.ts'
import { type Loaded, loadedText } from '../../loadScenario.ts'
import { storyOptions, tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { progress } from '../../shell/progress.ts'
import { DONE, type Shell, Stopped } from '../../shell/shell.ts'
import { refused, type StudyFlags } from '../../studyCommand.ts'
import { threadsOf } from '../../threads.ts'

export interface AssembleFlags extends StudyFlags, DataFlags {
  readonly data: string
  readonly write?: string
}

/** A complete scenario of a skeleton and a folder of data; where one was written before, what the data changed in it and in its answer. */
export async function assemble(shell: Shell, file: string, flags: AssembleFlags, command: string): Promise<number> {
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const { replications, seed } = flags
  const { folder, assembly, source } = await assembled(shell, file, flags.data, flags, seed)
  const before = flags.write === undefined ? null : await earlier(shell, flags.write)
  const { scenarioDifferences } = await import('@loopwright/scenario')
  const differences = before === null ? null : scenarioDifferences(before.scenario, source.scenario)
  const changed = before !== null && differences!.length > 0
  const result = changed ? await compared(shell, [before, source], flags) : null
  const code = await tell(shell, flags, {
    partial: result?.partial === true,
    document: () => assembleDocument({ skeleton: file, written: flags.write ?? null, folder, assembly, differences, result }),
    door: () => import('@loopwright/notebook/data'),
    tale: ({ compareStory }, { assembleStory }) => {
      const story = result === null ? null : compareStory([before!.scenario, source.scenario], result, storyOptions(before!))
      const cells = story === null ? [] : [story.answer, ...story.warnings, story.table, story.sure]
      return assembleStory(
        {
          skeleton: file,
          written: flags.write ?? '',
          files: folder.files,
          unused: folder.unused,
          changes: assembly.changes,
          notes: assembly.notes,
          differences,
        },
        cells,
      )
    },
    name: source.scenario.name,
    command,
  })
  if (code !== DONE || flags.write === undefined) return code
  const heading = `# Put together of ${file} and the tables in ${flags.data}, by: loopwright assemble (${replications} ${replications === 1 ? 'window' : 'windows'} to compare, seed ${seed}).\n`
  await shell.writeFile(flags.write, `${heading}${assembly.text!}`)
  shell.err.write(`Scenario: ${flags.write}\n`)
  return DONE
}

/** What was written last; null: nothing that reads. */
async function earlier(shell: Shell, file: string): Promise<Loaded | null> {
  const text = await shell.readFile(file).catch(() => null)
  if (text === null) return null
  try {
    return await loadedText(shell, file, text)
  } catch (error) {
    if (error instanceof Stopped) throw error
    shell.err.write(`"${file}" is there and does not read; it will be written over, and is compared with nothing\n`)
    return null
  }
}

async function compared(shell: Shell, [before, after]: readonly [Loaded, Loaded], flags: AssembleFlags): Promise<CompareResult | null> {
  const { compareLines } = await import('@loopwright/study/compare')
  const { replications, seed } = flags
  const lines = [
    { name: 'before', ...before },
    { name: 'now', ...after },
  ].map(({ name, scenario }) => ({ name, line: scenario.line, plan: scenario.plan?.unitsPerWindow ?? null }))
  const [a, b] = lines.map(({ line }) => line.window)
  if (JSON.stringify(a) !== JSON.stringify(b)) {
    shell.err.write('the judged shift has changed, so that the answers are not compared\n')
    return null
  }
  const told = progress(shell, `what the data changed, ${replications} replications each, seed ${seed}`, 2 * replications)
  const store = await openStore(shell, flags)
  const result = await refused(shell, () =>
    compareLines(lines, { replications }, { seed, store, signal: shell.signal, onProgress: told.onProgress, ...threadsOf(flags, shell) }),
  )
  told.end(result.partial)
  tellStore(shell, store)
  return result
}
