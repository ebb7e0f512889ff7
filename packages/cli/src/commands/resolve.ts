import { completeForm } from '@loopwright/scenario'
import { loadScenario } from '../loadScenario.ts'
import { DONE, type Shell } from '../shell/shell.ts'

/** Prints the complete form of a scenario: every default written out, and where it came from. */
export async function resolve(shell: Shell, file: string, flags: { readonly variation?: string }): Promise<number> {
  const { read } = await loadScenario(shell, file, flags.variation)
  shell.out.write(completeForm(read, file))
  return DONE
}
