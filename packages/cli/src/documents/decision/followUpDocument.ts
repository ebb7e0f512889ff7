/** The document of `loopwright followup --json`. */
import type { FollowUpRuns } from '@loopwright/notebook'
import { alternativeHead, alternativeHeadSchema } from './decisionParts.ts'
import { chance, count, documentSchema, flag, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function followUpDocument(
  file: string,
  { kind, name, result, stations, factor, recalibrated, plan, written }: FollowUpRuns,
): object {
  return { ...alternativeHead(kind, file, name), plan, ...result, stations, factor, recalibrated, written }
}

/** JSON Schema of that document. */
export function followUpSchema(): Schema {
  return documentSchema(
    'A follow-up, by loopwright',
    record(
      {
        ...alternativeHeadSchema('follow-up'),
        plan: orNull(number('units wanted per shift')),
        weeks: list(
          record(
            {
              name: text('of the week'),
              units: count('counted'),
              shifts: count('worked'),
              expected: number('units by the forecast'),
              low: number('one of twenty weeks makes less'),
              high: number('one of twenty weeks makes more'),
              side: words(['below', 'within', 'above'], 'of the band'),
            },
            'one week',
          ),
          'in the order of the table',
        ),
        realMean: number('units per shift, counted'),
        forecastMean: number('units per shift'),
        differenceShare: number('real less forecast over forecast'),
        chance: share('of a mean so low or lower if the forecast holds'),
        state: words(['still stands', 'in doubt', 'no longer stands', 'too few weeks'], 'of the promise'),
        stations: orNull(
          list(
            record(
              {
                station: text('name'),
                seconds: number('mean work a unit, measured'),
                n: count('cycles'),
                sd: number('of cycles'),
                modelSeconds: number('mean work a unit, model'),
                ratio: number('measured over model'),
                standardErrors: orNull(number('of the measured mean')),
                differs: flag('more than 3 standard errors and 2 %'),
                cyclesFor5: count('cycles that would know the mean to ± 5 %'),
              },
              'one station',
            ),
            'largest deviation first; null: none was measured',
          ),
        ),
        factor: orNull(
          record(
            { factor: number('on all work'), units: number('per shift with it'), found: flag('it gives the counts') },
            'null: stations were measured, or nothing differs',
          ),
        ),
        recalibrated: orNull(
          record(
            { units: list(number('units'), 'per shift, by replication'), meetsPlan: orNull(chance('shifts with at least the plan')) },
            'the line with what was learned; null: nothing needed it',
          ),
        ),
        written: orNull(text('file of the recalibrated scenario')),
      },
      'What `loopwright followup --json` prints.',
    ),
  )
}
