/** The document of `loopwright mix --json`. */
import type { MixStudy, OrderTable } from '@loopwright/measure'
import { tablesHead, tablesHeadSchema } from './accountDocument.ts'
import { count, documentSchema, list, number, record, type Schema, share, text, words } from '../schemaParts.ts'

export function mixDocument(tables: readonly OrderTable[], study: MixStudy): object {
  return { ...tablesHead('mix', tables), ...study }
}

/** JSON Schema of that document. */
export function mixSchema(): Schema {
  const shares = (says: string): Schema =>
    list(record({ name: text('product'), units: count('ordered'), share: share('of all') }, 'one product'), says)
  return documentSchema(
    'Orders, by loopwright',
    record(
      {
        ...tablesHeadSchema('mix'),
        units: count('ordered'),
        products: shares('without options'),
        options: list(
          record(
            { option: text('name'), share: share('of all units'), byProduct: list(share('of the product'), 'in the order of products') },
            'one option',
          ),
          'as met',
        ),
        variants: shares('with options'),
        levelled: list(text('product'), 'one round of the levelled order'),
        worst: list(
          record(
            {
              length: words(['hour', 'day', 'week'], 'of the stretch'),
              start: number('wall clock, seconds from 1970-01-01'),
              units: count('ordered in it'),
              load: number('seconds of work per unit, or units'),
              loadMean: number('of all stretches'),
              stretches: count('looked at'),
              sequence: list(text('product with options'), 'in the order of the orders'),
            },
            'the heaviest of its length',
          ),
          'empty: the orders have no days',
        ),
      },
      'What `loopwright mix --json` prints.',
    ),
  )
}
