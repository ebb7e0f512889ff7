import { formatProblems, type Problem } from '@loopwright/scenario'
import { type GridResult, gridLineCount, runGrid } from '@loopwright/study/compare'
import { gridDocument } from '../documents/gridDocument.ts'
import type { FactorLevels } from '../options/levels.ts'
import { loadScenario } from '../loadScenario.ts'
import { Misuse, refusals, type Shell, unlessStopped } from '../shell/shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { storyOptions } from '../output/tell.ts'

export interface GridFlags extends StudyFlags {
  readonly carriers?: readonly number[]
  readonly set?: readonly FactorLevels[]
}

/** Every setting of several factors in the same random worlds. */
export async function grid(shell: Shell, file: string, flags: GridFlags, command: string): Promise<number> {
  const { replications, seed, carriers, set = [] } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { scenario, text } = source
  const notebook = await import('@loopwright/notebook')
  const files = (path: string): string | null => shell.readBeside(file, path)
  const asked = {
    ...(carriers === undefined ? {} : { carriers }),
    set: Object.fromEntries(set.map(({ path, levels }) => [path, levels])),
  }
  const { factors, points, problems } = await unlessStopped(shell, 'the settings were read: nothing was run', () =>
    refusals(() => notebook.gridLines({ scenario, text, files, changePrefix: '--set ' }, asked)),
  )
  tellProblems(shell, problems, text, file, points.length > 0)
  const base = { line: scenario.line, plan: scenario.plan?.unitsPerWindow ?? null }
  const runs = gridLineCount(points, base) * replications
  return await studyCommand<GridResult>(shell, flags, {
    what: `${points.length} settings, ${replications} replications each: ${runs} runs, seed ${seed}`,
    total: runs,
    source,
    command,
    study: (options) => runGrid(points, { factors, base, replications }, options),
    document: (result) => gridDocument(source, result),
    tale: (result) => notebook.gridStory(scenario, result, storyOptions(source, result)),
    simulated: (result) => result,
  })
}

/** Warnings to standard error; errors end the command. */
function tellProblems(shell: Shell, problems: readonly Problem[], text: string, file: string, runs: boolean): void {
  if (problems.length === 0 && runs) return
  const told = formatProblems(problems, text, file)
  if (!runs) throw new Misuse(told)
  shell.err.write(`${told}\n`)
}
