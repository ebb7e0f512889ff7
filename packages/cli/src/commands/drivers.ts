import { mixGroups, stopGroups } from '@loopwright/scenario'
import { type DriverResult, findDrivers } from '@loopwright/study'
import { driversOf, wholeChanges } from '@loopwright/study/change'
import { driverDocument } from '../documents/driverDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import type { Shell } from '../shell/shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { storyOptions } from '../output/tell.ts'

/** What drives the output, and what limits it. */
export async function drivers(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line } = source.scenario
  const groups = { stopGroups: stopGroups(source.scenario), mixGroups: mixGroups(source.scenario) }
  const lines = 2 * driversOf(line, groups).length + wholeChanges(line).length + 1
  return await studyCommand<DriverResult>(shell, flags, {
    what: `what drives the output, ${lines} lines, ${replications} replications each, seed ${seed}`,
    total: lines * replications,
    source,
    command,
    study: (options) => findDrivers(line, { replications, ...groups }, options),
    document: (result) => driverDocument(source, result),
    tale: (result, { driverStory }) => driverStory(source.scenario, result, storyOptions(source, result)),
    simulated: (result) => result,
  })
}
