/** A scenario file, read and checked; what is wrong with it is told in full. */
import {
  applyVariation,
  type Changes,
  type FileRead,
  formatProblems,
  type Problem,
  readScenario,
  readScenarioWith,
  type Scenario,
  type ScenarioNotes,
} from '@loopwright/scenario'
import { Misuse, type Shell, unlessStopped } from './shell/shell.ts'

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
  /** of the text */
  readonly read: FileRead
}

const READING = 'the scenario was read: nothing was run'

/**
 * Reads a scenario file; its warnings go to standard error.
 *
 * @param variation  named in the file; its values replace those of the scenario
 * @param told       warnings that were told already, such as those of the same file without the variation
 * @param kept       what stands in the file, where it was read already
 * @throws Misuse    with all problems, each with its place and remedy
 */
export async function loadScenario(
  shell: Shell,
  file: string,
  variation?: string,
  told: readonly Problem[] = [],
  kept: string | null = null,
): Promise<Loaded> {
  const written = kept ?? (await shell.readFile(file))
  const text = variation === undefined ? written : await unlessStopped(shell, READING, () => varied(written, file, variation))
  return { ...(await loadedText(shell, file, text, told)), variation: variation ?? null }
}

/**
 * A text as if it stood in a file; its warnings go to standard error.
 *
 * @throws Misuse  with all problems, each with its place and remedy
 */
export async function loadedText(shell: Shell, file: string, text: string, told: readonly Problem[] = []): Promise<Loaded> {
  const files = (name: string): string | null => shell.readBeside(file, name)
  const read = await unlessStopped(shell, READING, () => readScenario(text, { files }))
  const { scenario, notes, problems } = read
  if (scenario === null) throw new Misuse(formatProblems(problems, text, file))
  const fresh = freshOf(problems, told)
  if (fresh.length > 0) shell.err.write(`${formatProblems(fresh, text, file)}\n`)
  return { file, text, variation: null, scenario: onOneLine(scenario), problems, notes, read }
}

/** What people read stands on one line: a line end in a title must not look like a sentence of ours. The names that find random streams have none. */
function onOneLine(scenario: Scenario): Scenario {
  const told = (text: string): string => text.replace(/[\t ]*[\r\n\v\f\u0085\u2028\u2029]\s*/g, ' ')
  const { name, question, line } = scenario
  const stations = line.stations.map((station) => ({ ...station, title: told(station.title) }))
  const same = line.stations.every(({ title }, index) => title === stations[index]!.title)
  return { ...scenario, name: told(name), question: told(question), line: same ? line : { ...line, stations } }
}

/**
 * The same scenario with values changed by path; what the changes are warned of goes to standard error.
 *
 * @param name     what the changed line is called
 * @throws Misuse  with all problems, each with its place and remedy
 */
export async function withChanges(shell: Shell, base: Loaded, name: string, changes: Changes): Promise<Loaded> {
  const { file, text, read } = base
  const files = (path: string): string | null => shell.readBeside(file, path)
  const { scenario, problems, notes } = await unlessStopped(shell, READING, () =>
    readScenarioWith(text, changes, { files, changePrefix: '--set ' }),
  )
  if (scenario === null) throw new Misuse(formatProblems(problems, text, file))
  const fresh = freshOf(problems, base.problems)
  if (fresh.length > 0) shell.err.write(`${formatProblems(fresh, text, file)}\n`)
  return { file, text, variation: name, scenario: onOneLine(scenario), problems, notes, read }
}

/** Warnings that were not told yet. */
function freshOf(problems: readonly Problem[], told: readonly Problem[]): Problem[] {
  const known = new Set(told.map(({ message }) => message))
  return problems.filter(({ message }) => !known.has(message))
}

function varied(text: string, file: string, variation: string): string {
  const { text: changed, problems } = applyVariation(text, variation)
  if (changed === null) throw new Misuse(formatProblems(problems, text, file))
  return changed
}
