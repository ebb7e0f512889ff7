/** A scenario file, read and checked; what is wrong with it is told in full. */
import { formatProblems, type Problem, readScenario, type Scenario, type ScenarioNotes } from '@loopwright/scenario'
import { Misuse, type Shell } from './shell.ts'

export interface Loaded {
  /** as the user wrote it */
  readonly file: string
  readonly text: string
  readonly scenario: Scenario
  /** warnings */
  readonly problems: readonly Problem[]
  /** what the reader made of it */
  readonly notes: ScenarioNotes
}

/**
 * Reads a scenario file; its warnings go to standard error.
 *
 * @throws Misuse  with all problems, each with its place and remedy
 */
export async function loadScenario(shell: Shell, file: string): Promise<Loaded> {
  const text = await shell.readFile(file)
  const { scenario, problems, notes } = readScenario(text, file, { files: (name) => shell.readBeside(file, name) })
  const told = problems.length === 0 ? '' : formatProblems(problems, text, file)
  if (scenario === null || notes === null) throw new Misuse(told)
  if (told !== '') shell.err.write(`${told}\n`)
  return { file, text, scenario, problems, notes }
}
