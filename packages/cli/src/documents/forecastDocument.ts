/** The document of `loopwright forecast --json`. */
import type { ForecastResult } from '@loopwright/notebook'
import { countSchema } from './countDocument.ts'
import { doubtSchema } from './data/doubtDocument.ts'
import { chanceFlag, headSchema, lawDocument, lawSchema, type Source, runsHead } from './head.ts'
import {
  chance,
  count,
  documentSchema,
  list,
  number,
  orNull,
  outputInterval,
  quantile,
  record,
  type Schema,
  verdict,
} from './schemaParts.ts'

export function forecastDocument(
  source: Source,
  { kind, sweep, shift, week, shiftsPerWeek, netSeconds, overtime }: ForecastResult,
): object {
  const { law, counts } = sweep
  return {
    ...runsHead(source, { ...sweep, kind }),
    law: lawDocument(law, source.scenario.line),
    shift,
    week,
    shiftsPerWeek,
    netSeconds,
    overtime,
    count: counts[0]!,
  }
}

const spread = (of: string): Schema =>
  record(
    {
      units: list(number('units'), `of each ${of}`),
      mean: orNull(outputInterval(`units per ${of}`)),
      p10: orNull(quantile('nine of ten are better')),
      p50: orNull(quantile('half of them are better')),
      p90: orNull(quantile('one of ten is better')),
      plan: orNull(number(`units wanted per ${of}`)),
      meetsPlan: orNull(chance(`${of}s with at least the plan`)),
      planVerdict: orNull(verdict(`whether nine of ten ${of}s meet the plan`)),
    },
    `what a ${of} makes`,
  )

/** JSON Schema of that document. */
export function forecastSchema(): Schema {
  return documentSchema(
    'A forecast of loopwright',
    record(
      {
        ...headSchema('forecast', 'asked for'),
        chance: chanceFlag(),
        law: lawSchema(),
        shift: spread('shift'),
        week: spread('week'),
        shiftsPerWeek: count('simulated shifts, added up, that make a week'),
        netSeconds: number('of a shift, without breaks; seconds'),
        overtime: orNull(
          record(
            {
              minutes: list(number('minutes'), 'of each simulated shift'),
              mean: outputInterval('minutes a shift'),
              p90: orNull(quantile('nine of ten shifts need no more')),
              unitsPerMinute: number('units per net minute, by which a shortfall is made up'),
            },
            'what the plan takes beyond the shift; null without a plan, or where nothing is made',
          ),
        ),
        count: countSchema(),
        inputDoubt: doubtSchema(),
      },
      'What `loopwright forecast --json` prints. Units, times in seconds, shares from 0 to 1.',
    ),
  )
}
