/** The document of `loopwright followup --json`. */
import type { FollowUpRuns } from '@loopwright/notebook/decision'
import { alternativeHead, alternativeHeadSchema } from './decisionParts.ts'
import { chance, count, documentSchema, flag, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function followUpDocument(
  file: string,
  { kind, name, result, stations, stops, waits, factor, recalibrated, plan, written }: FollowUpRuns,
): object {
  return { ...alternativeHead(kind, file, name), plan, ...result, stations, stops, waits, factor, recalibrated, written }
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
        above: flag('so many would be as seldom as so few that break a promise'),
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
        stops: orNull(
          list(
            record(
              {
                stop: text('as the scenario calls it'),
                count: count('counted'),
                minutes: number('of all of them'),
                shifts: count('in which they were counted'),
                modelCount: number('in so many shifts'),
                minutesEach: orNull(number('minutes of one; null: none was counted')),
                modelMinutesEach: orNull(number('minutes of one in the model; null: it has none')),
                countRatio: orNull(number('counted over model')),
                lengthRatio: orNull(number('length over that of the model')),
                countDiffers: flag('more than 3 standard errors and a fifth'),
                lengthDiffers: flag('more than 3 standard errors and a fifth'),
              },
              'one stop',
            ),
            'what costs most minutes more first; null: none was counted',
          ),
        ),
        waits: list(
          record(
            {
              station: text('name'),
              state: words(['blocked', 'starved'], 'what it waits in'),
              share: share('of the shift, measured'),
              modelShare: share('of the shift, model'),
              differs: flag('more than 3 points'),
            },
            'one wait',
          ),
          'largest difference first',
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
