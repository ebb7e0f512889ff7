/** The document of `loopwright balance --json`. */
import type { BalanceResult } from '@loopwright/study/change'
import { documentSchema, list, number, record, type Schema, share, text } from './schemaParts.ts'
import { formHead, formHeadSchema } from './form.ts'

export function balanceDocument(file: string, { kind, ...rest }: BalanceResult): object {
  return { ...formHead(kind), file, ...rest }
}

/** JSON Schema of that document. */
export function balanceSchema(): Schema {
  return documentSchema(
    'Tasks shared among stations, by loopwright',
    record(
      {
        ...formHeadSchema('balance'),
        file: text('table or scenario, as given'),
        cycleSeconds: number('the cycle that the grouping keeps, mean times'),
        stations: list(
          record({ tasks: list(text('name'), 'in an order that keeps the rules'), seconds: number('mean work') }, 'one station'),
          'in the order of flow',
        ),
        lossShare: share('1 − work / (stations × cycle)'),
      },
      'What `loopwright balance --json` prints. One of the best groupings; times in seconds.',
    ),
  )
}
