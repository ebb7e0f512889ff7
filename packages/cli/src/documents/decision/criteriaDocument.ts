/** The document of `loopwright criteria --json`. */
import type { CriteriaResult, DecisionRuns } from '@loopwright/notebook/decision'
import { decisionHead, decisionHeadSchema } from './decisionParts.ts'
import { count, documentSchema, flag, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function criteriaDocument(runs: DecisionRuns, { kind, input, matrix, figures }: CriteriaResult): object {
  const { alternatives, mustHaves, criteria } = input
  const names = (indices: readonly number[]): string[] => indices.map((index) => alternatives[index]!)
  const { order, winners, cases, ...rest } = matrix
  return {
    ...decisionHead(kind, runs),
    mustHaves,
    criteria: criteria.map((each, at) => ({ ...each, figures: figures[at]! })),
    ...rest,
    order: names(order),
    winners: names(winners),
    cases: cases.map((each) => ({ ...each, winners: names(each.winners) })),
  }
}

const perAlternative = (each: Schema, of: string): Schema => list(each, `${of}, in the order of the lines`)

/** JSON Schema of that document. */
export function criteriaSchema(): Schema {
  return documentSchema(
    'A matrix of criteria, by loopwright',
    record(
      {
        ...decisionHeadSchema('criteria'),
        mustHaves: list(
          record({ name: text('of the must-have'), met: perAlternative(flag('has it'), 'answers') }, 'one must-have'),
          'in the order of the file',
        ),
        criteria: list(
          record(
            {
              name: text('of the criterion'),
              weight: number('per cent'),
              scores: perAlternative(number('1 … 5'), 'scores'),
              figures: orNull(perAlternative(number('in the unit of the figure'), 'figures behind computed scores; null: the team scored')),
            },
            'one criterion',
          ),
          'in the order of the file',
        ),
        totals: perAlternative(number('weighted mean, 1 … 5'), 'totals'),
        misses: perAlternative(list(text('must-have'), 'that it misses'), 'what each misses'),
        order: list(text('name'), 'alternatives that are in, best first'),
        winners: list(text('name'), 'several: a tie; none: all are out'),
        cases: list(
          record(
            {
              criterion: text('whose weight is changed'),
              change: words(['more', 'less', 'left out'], 'by 30 %, or to nothing'),
              winners: list(text('name'), 'several: a tie'),
            },
            'one case',
          ),
          'each weight by itself',
        ),
        winShares: perAlternative(share('of the draws that it wins'), 'shares'),
        tieShare: share('of the draws that end in a tie'),
        draws: count('of all weights within ± 30 %'),
      },
      'What `loopwright criteria --json` prints.',
    ),
  )
}
