/** The document of `loopwright screen --json`. */
import { GUIDANCE_WORDS, metresOf, RISK_REDUCTION, SCREENING_CAUTION, type ScreeningResult } from '@loopwright/decide/screening'
import type { DecisionRuns } from '@loopwright/notebook/decision'
import { decisionHead, decisionHeadSchema } from './decisionParts.ts'
import { byName, count, documentSchema, flag, list, number, orNull, record, type Schema, text, words } from '../schemaParts.ts'

export function screeningDocument(
  runs: DecisionRuns,
  screened: readonly { readonly name: string; readonly result: ScreeningResult }[],
): object {
  return {
    ...decisionHead('screening', runs),
    caution: SCREENING_CAUTION,
    riskReduction: RISK_REDUCTION,
    screenings: screened.map(({ name, result: { figures, findings, walked, counts } }) => ({
      name,
      figures,
      counts,
      findings,
      walked: walked.map((one) => ({ ...one, metres: metresOf(one) })),
    })),
  }
}

/** JSON Schema of that document. */
export function screeningSchema(): Schema {
  return documentSchema(
    'A screening of loopwright',
    record(
      {
        ...decisionHeadSchema('screening'),
        caution: text('what these figures are, and what they are not'),
        riskReduction: list(text('one step'), 'in this order'),
        screenings: list(
          record(
            {
              name: text('of the alternative'),
              figures: record(
                {
                  speed: orNull(number('m/s, fastest drive')),
                  acceleration: orNull(number('m/s²')),
                  zoneLength: orNull(number('m, shortest zone')),
                  zone: orNull(text('its name')),
                  carrierLength: orNull(number('m')),
                  carrierWidth: orNull(number('m')),
                  sensorBeforeStop: number('m'),
                  reactionSeconds: number('s'),
                  standingGap: orNull(number('m, between two carriers that stand')),
                  byHand: flag('somebody pushes or pulls'),
                },
                'read off the line',
              ),
              counts: byName(GUIDANCE_WORDS, count('figures, each once however many sources judge it'), 'by result'),
              findings: list(
                record(
                  {
                    id: text('of the finding'),
                    topic: text('what it is about'),
                    what: text('what the figure is of'),
                    value: orNull(number('SI; null: not known')),
                    unit: words(['N', 'm', 'm/s', 's', 'kg', 'V', 'W', 'A', 'm/s²', 'count'], 'of value and guidance'),
                    guidance: orNull(
                      record(
                        {
                          value: number('SI'),
                          upTo: orNull(number('upper end of a range')),
                          side: words(['at most', 'at least', 'between'], 'on which side a figure should lie'),
                          source: text('where it stands'),
                          edition: text('of the source'),
                          evidence: text('how it is known'),
                        },
                        'published value',
                      ),
                    ),
                    margin: orNull(number('share of the guidance value that is left')),
                    word: words(GUIDANCE_WORDS, 'the only words there are'),
                    assumptions: list(text('one'), 'what the figure takes for granted'),
                    why: orNull(text('why nothing was compared')),
                    measure: text('on the machine, or to read'),
                  },
                  'one figure',
                ),
                'all figures',
              ),
              walked: list(
                record(
                  {
                    person: text('named operator, or station whose own operator it is'),
                    metres: number('m in a shift'),
                    parts: list(
                      record(
                        {
                          of: text('task, station, or what else is walked for'),
                          metresEach: number('m each time'),
                          times: number('mean of a shift'),
                          known: text('how both are known'),
                        },
                        'one kind of way',
                      ),
                      'they sum to the metres',
                    ),
                  },
                  'one person',
                ),
                'where the file states ways that are walked for each unit',
              ),
            },
            'one alternative',
          ),
          'in the order of the file',
        ),
      },
      'What `loopwright screen --json` prints. SI units.',
    ),
  )
}
