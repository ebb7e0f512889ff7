/** A decision file with the scenarios of its alternatives, read and checked; what is wrong with any of them is told in full. */
import { dirname, isAbsolute, join } from 'node:path'
import { type Alternative, type Decision, readDecision, type ShiftSection } from '@loopwright/decide'
import { shiftChanges } from '@loopwright/notebook/decision'
import { formatProblems } from '@loopwright/scenario'
import { type Loaded, loadScenario, withChanges } from './loadScenario.ts'
import { Misuse, refusals, type Shell } from './shell/shell.ts'

export interface LoadedDecision {
  /** as the user wrote it */
  readonly file: string
  readonly decision: Decision
  /** in the order of the alternatives */
  readonly loaded: readonly Loaded[]
}

/**
 * A decision file may come from anybody, as a scenario may: its scenarios lie in its own folder, in the one where the command runs, or below them.
 *
 * @throws Misuse  with all problems, each with its place and remedy
 */
export async function loadDecision(shell: Shell, file: string): Promise<LoadedDecision> {
  const text = await shell.readFile(file)
  const { decision, problems } = readDecision(text)
  if (decision === null) throw new Misuse(formatProblems(problems, text, file))
  const base = await scenarioBeside(shell, file, decision.scenario)
  const loaded: Loaded[] = []
  for (const alternative of decision.alternatives) loaded.push(await loadAlternative(shell, file, base, alternative))
  return { file, decision, loaded }
}

async function loadAlternative(shell: Shell, file: string, base: Loaded, { name, source }: Alternative): Promise<Loaded> {
  switch (source.kind) {
    case 'scenario':
      return base
    case 'file':
      return await scenarioBeside(shell, file, source.file)
    case 'variation':
      return await loadScenario(shell, base.file, source.variation, base.problems)
    case 'set':
      return await withChanges(shell, base, name, source.changes)
  }
}

/**
 * The scenario of a shift: that of an alternative with what the shift changes in it.
 *
 * @param of       index of the alternative
 * @throws Misuse  with all problems, each with its place and remedy
 */
export async function loadShift(shell: Shell, { decision, loaded }: LoadedDecision, of: number, shift: ShiftSection): Promise<Loaded> {
  const { name, source } = decision.alternatives[of]!
  const { file, problems } = loaded[of]!
  const { variation, changes } = refusals(() => shiftChanges(source, shift))
  const found = await loadScenario(shell, file, variation ?? undefined, problems)
  return Object.keys(changes).length === 0 ? found : await withChanges(shell, found, `${name}, ${shift.name}`, changes)
}

/** @param path  from the folder of the decision file */
async function scenarioBeside(shell: Shell, file: string, path: string): Promise<Loaded> {
  const text = shell.readBeside(file, path)
  return await loadScenario(shell, isAbsolute(path) ? path : join(dirname(file), path), undefined, [], text)
}
