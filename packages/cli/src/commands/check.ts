import { loadScenario } from '../loadScenario.ts'
import { refusals, type Shell } from '../shell/shell.ts'
import { type OutputFlags, storyOptions, tell } from '../output/tell.ts'
import { checkOutputs } from '../output/writeTables.ts'

/** Says in plain words what was understood of a scenario; runs nothing. */
export async function check(shell: Shell, file: string, flags: Omit<OutputFlags, 'json'>, command: string): Promise<number> {
  const source = await loadScenario(shell, file, flags.variation)
  await checkOutputs(shell, flags)
  return await tell(shell, flags, {
    partial: false,
    document: null,
    tale: ({ checkStory }) => refusals(() => checkStory(source.scenario, source.notes, storyOptions(source))),
    name: source.scenario.name,
    command,
  })
}
