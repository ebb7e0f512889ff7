/** The document of `loopwright sweep --json`: full precision, the same bytes for any number of workers. */
import type { SweepResult } from '@loopwright/study'
import { countSchema } from './countDocument.ts'
import { chanceFlag, headSchema, lawDocument, lawSchema, runsHead, type Source } from './head.ts'
import { count, documentSchema, flag, list, number, orNull, planAnswer, record, type Schema, share, words } from './schemaParts.ts'

export function sweepDocument(source: Source, result: SweepResult): object {
  const { answer, planAnswer, counts } = result
  return {
    ...runsHead(source, result),
    answer,
    planAnswer,
    law: lawDocument(result.law, source.scenario.line),
    counts,
  }
}

/** The answer, of sweeps and of carrier studies. */
export const answerSchema = (): Schema =>
  orNull(
    record(
      {
        within: share('how far below the best mean is near enough'),
        level: share('confidence of the answer'),
        reference: count('where the walk downwards began: carriers with the highest mean in the pilot'),
        best: count('carriers with the highest mean; of equals the fewest'),
        chosen: orNull(count('smallest number of carriers confirmed as near enough to every other; null: none')),
        notConfirmed: orNull(
          record(
            {
              carriers: count('where the walk ended'),
              reason: words(['may fall short', 'gridlock'], 'why'),
              shortBy: number('units per window by which its lower limit misses the border'),
              lowerLimit: number('least one-sided lower limit of the mean of Y_N − (1 − within)·Y_m over the other counts m'),
              against: count('the m that gives it'),
              shown: flag('it does fall short: its upper limit against the reference misses the border too'),
            },
            'the number of carriers below the chosen one',
          ),
        ),
        bestAtUpperEnd: flag('the best is the largest tried: more may be better'),
        chosenAtLowerEnd: flag('the chosen is the smallest tried: fewer may do'),
        replications: count('replications compared'),
      },
      'the answer by Procedure W; null below 2 replications',
    ),
  )

/** JSON Schema of that document. */
export function sweepSchema(): Schema {
  return documentSchema(
    'A carrier sweep of loopwright',
    record(
      {
        ...headSchema('carrier sweep', 'asked for, per number of carriers'),
        chance: chanceFlag(),
        answer: answerSchema(),
        planAnswer: planAnswer(),
        law: lawSchema(),
        counts: list(countSchema(), 'by carriers, ascending'),
      },
      'What `loopwright sweep --json` prints. Times in seconds, rates per second, shares from 0 to 1.',
    ),
  )
}
