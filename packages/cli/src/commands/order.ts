import { type OrderResult, orderStations } from '@loopwright/study'
import { orderDocument } from '../documents/orderDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import { orderRules, type OrderFlags as Rules } from '../options/orderRules.ts'
import type { Shell } from '../shell/shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { storyOptions } from '../output/tell.ts'

export interface OrderFlags extends StudyFlags, Rules {
  /** smallest difference worth caring about, units */
  readonly delta?: number
}

/** Which order and places of stations make most. */
export async function order(shell: Shell, file: string, flags: OrderFlags, command: string): Promise<number> {
  const { replications, seed, delta } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line } = source.scenario
  const rules = orderRules(line, flags)
  const names = rules.move.map((station) => line.stations[station]!.name).join(', ')
  const request = { check: replications, ...rules, ...(delta === undefined ? {} : { delta }) }
  return await studyCommand<OrderResult>(shell, flags, {
    what: `where to put ${names}, seed ${seed}`,
    total: 1,
    source,
    command,
    study: (options) => orderStations(line, request, options),
    document: (result) => orderDocument(source, result, replications),
    tale: (result, { orderStory }) => orderStory(source.scenario, result, storyOptions(source, result)),
    simulated: (result) => ({ ...result, replications }),
  })
}
