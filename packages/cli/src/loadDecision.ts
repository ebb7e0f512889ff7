/** A decision file with the scenarios of its alternatives, read and checked; what is wrong with any of them is told in full. */
import { join, dirname } from 'node:path'
import { type Alternative, type Decision, readDecision } from '@loopwright/decide'
import { formatProblems } from '@loopwright/scenario'
import { type Loaded, loadScenario, withChanges } from './loadScenario.ts'
import { Misuse, type Shell } from './shell/shell.ts'

export interface LoadedDecision {
  /** as the user wrote it */
  readonly file: string
  readonly decision: Decision
  /** in the order of the alternatives */
  readonly loaded: readonly Loaded[]
}

/** @throws Misuse  with all problems, each with its place and remedy */
export async function loadDecision(shell: Shell, file: string): Promise<LoadedDecision> {
  const text = await shell.readFile(file)
  const { decision, problems } = readDecision(text)
  if (decision === null) throw new Misuse(formatProblems(problems, text, file))
  const base = await loadScenario(shell, beside(file, decision.scenario))
  const loaded: Loaded[] = []
  for (const alternative of decision.alternatives) loaded.push(await loadAlternative(shell, file, base, alternative))
  return { file, decision, loaded }
}

async function loadAlternative(shell: Shell, file: string, base: Loaded, { name, source }: Alternative): Promise<Loaded> {
  switch (source.kind) {
    case 'scenario':
      return base
    case 'file':
      return await loadScenario(shell, beside(file, source.file))
    case 'variation':
      return await loadScenario(shell, base.file, source.variation, base.problems)
    case 'set':
      return await withChanges(shell, base, name, source.changes)
  }
}

/** A path from the folder of the decision file. */
const beside = (file: string, path: string): string => join(dirname(file), path)
