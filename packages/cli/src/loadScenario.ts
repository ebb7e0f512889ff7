/** A scenario file, read and checked; what is wrong with it is told in full. */
import { applyVariation, formatProblems, type Problem, readScenario, type Scenario, type ScenarioNotes } from '@loopwright/scenario'
import { Misuse, type Shell } from './shell.ts'

export interface Loaded {
  /** as the user wrote it */
  readonly file: string
  /** of the scenario, with the variation put in */
  readonly text: string
  /** named set of changed values that was put in; null: none */
  readonly variation: string | null
  readonly scenario: Scenario
  /** warnings */
  readonly problems: readonly Problem[]
  /** what the reader made of it */
  readonly notes: ScenarioNotes
}

/**
 * Reads a scenario file; its warnings go to standard error.
 *
 * @param variation  named in the file; its values replace those of the scenario
 * @throws Misuse    with all problems, each with its place and remedy
 */
export async function loadScenario(shell: Shell, file: string, variation?: string): Promise<Loaded> {
  const written = await shell.readFile(file)
  const text = variation === undefined ? written : varied(written, file, variation)
  const { scenario, problems, notes } = readScenario(text, file, { files: (name) => shell.readBeside(file, name) })
  const told = problems.length === 0 ? '' : formatProblems(problems, text, file)
  if (scenario === null || notes === null) throw new Misuse(told)
  if (told !== '') shell.err.write(`${told}\n`)
  return { file, text, variation: variation ?? null, scenario, problems, notes }
}

function varied(text: string, file: string, variation: string): string {
  const { text: changed, problems } = applyVariation(text, variation)
  if (changed === null) throw new Misuse(formatProblems(problems, text, file))
  return changed
}
