import { type OrderResult, stationOrder } from '@loopwright/study'
import { orderDocument } from '../documents/orderDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import { orderRules, type OrderFlags as Rules } from '../orderRules.ts'
import type { Shell } from '../shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { orderSentences, orderSure, orderTable, todaySentence } from '../words/orderWords.ts'

export interface OrderFlags extends StudyFlags, Rules {
  /** smallest difference worth caring about, units */
  readonly delta?: number
}

/** Which order and places of stations make most. */
export async function order(shell: Shell, file: string, flags: OrderFlags, command: string): Promise<number> {
  const { replications, seed, delta } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line, calendar } = source.scenario
  const per = calendar?.shifts === 1 ? 'shift' : 'window'
  const rules = orderRules(line, flags)
  const names = rules.move.map((station) => line.stations[station]!.name).join(', ')
  const cells = import('../studyCells.ts')
  const request = { seed, check: replications, ...rules, ...(delta === undefined ? {} : { delta }) }
  return await studyCommand<OrderResult>(shell, flags, {
    what: `where to put ${names}, seed ${seed}`,
    total: 1,
    source,
    command,
    question: 'Which order of the stations makes the most?',
    study: (runner) => stationOrder(line, request, runner),
    partial: (result) => result.partial,
    document: (result) => orderDocument(source, result, replications),
    shown: async (result) => {
      const { studyShown, tableCell } = await cells
      const { orderPlans } = await import('../orderPlans.ts')
      return studyShown(
        {
          sentences: [...orderSentences(result, line, per), ...[todaySentence(result, per)].filter((text) => text !== null)],
          sure: orderSure(result, line, per),
          parts: result.table === null ? [] : [tableCell('orders', orderTable(result, line, per))],
          pageParts: orderPlans(source.scenario, result),
          warnings: result.partial ? ['Stopped early: what is there is told.'] : [],
        },
        {
          source,
          sentence: `${result.candidates.length} station orders simulated in the same worlds, the chosen one and today’s again in ${replications} fresh ones, seed ${seed}.`,
          seed,
          replications,
          partial: result.partial,
        },
      )
    },
  })
}
