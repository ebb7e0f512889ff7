/** A scenario file, read and checked; what is wrong with it is told in full. */
import { formatProblems, type Problem, readScenario, type Scenario } from '@loopwright/scenario'
import { Misuse, type Shell } from './shell.ts'

export interface Loaded {
  /** as the user wrote it */
  readonly file: string
  readonly text: string
  readonly scenario: Scenario
  /** warnings */
  readonly problems: readonly Problem[]
}

/**
 * Reads a scenario file; its warnings go to standard error.
 *
 * @throws Misuse  with all problems, each with its place and remedy
 */
export async function loadScenario(shell: Shell, file: string): Promise<Loaded> {
  const text = await shell.readFile(file)
  const { scenario, problems } = readScenario(text, file)
  const told = problems.length === 0 ? '' : formatProblems(problems, text, file)
  if (scenario === null) throw new Misuse(told)
  if (told !== '') shell.err.write(`${told}\n`)
  return { file, text, scenario, problems }
}
