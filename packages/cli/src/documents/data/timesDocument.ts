/** The document of `loopwright times --json`. */
import type { TaskTimes, TimeTable } from '@loopwright/measure'
import { distributionRecordSchema } from '@loopwright/scenario'
import { tablesHead, tablesHeadSchema } from './accountDocument.ts'
import { count, distribution, documentSchema, flag, list, number, orNull, record, type Schema, share, text, words } from '../schemaParts.ts'

export function timesDocument(tables: readonly TimeTable[], studies: readonly TaskTimes[]): object {
  return {
    ...tablesHead('times', tables),
    tasks: studies.map(
      ({ values, observations, choice, distribution, onlyRises, cycles, outliers, trend, people, rounding, ...numbers }) => ({
        ...numbers,
        halfWidth: cycles === null ? null : cycles.knownTo * numbers.mean,
        cycles,
        outliers: outliers === null ? null : { ...outliers, observations: outliers.observations.map(({ place }) => place) },
        trend,
        people,
        rounding,
        onlyRises,
        fits: (choice?.candidates ?? []).map(({ fit, test, holds }) => ({
          family: fit.family,
          shiftSeconds: fit.shift,
          parameters: fit.parameters,
          aicc: fit.aicc,
          andersonDarling: test.goodness.andersonDarling,
          p: test.pAndersonDarling,
          samples: test.samples,
          holds,
          chosen: fit === choice?.chosen?.fit,
        })),
        distribution,
        times: observations.map(({ line, observedSeconds, rating, operator }, index) => ({
          line,
          observedSeconds,
          rating,
          operator,
          seconds: values[index]!,
        })),
      }),
    ),
  }
}

/** JSON Schema of that document. */
export function timesSchema(): Schema {
  const seconds = (says: string): Schema => number(`seconds, ${says}`)
  return documentSchema(
    'A time study, by loopwright',
    record(
      {
        ...tablesHeadSchema('times'),
        tasks: list(
          record(
            {
              task: text('name of the task'),
              variant: orNull(text('name of the variant; null: the table tells none')),
              n: count('times measured'),
              mean: seconds('mean, with rating and allowance'),
              halfWidth: orNull(seconds('half-width of the 95 % interval of the mean; null: one time')),
              sd: orNull(seconds('standard deviation, divisor n − 1; null: one time')),
              cv: orNull(number('standard deviation over mean')),
              least: seconds('shortest'),
              p10: seconds('nine of ten are longer'),
              median: seconds('median'),
              p90: seconds('nine of ten are shorter'),
              most: seconds('longest'),
              cycles: orNull(
                record(
                  {
                    needed: count('times needed for the half-width asked for, by t'),
                    more: count('beyond those there are'),
                    handbook: count('by the formula of work study with 2 in place of t'),
                    knownTo: number('half-width of the 95 % interval of the mean over the mean'),
                  },
                  'null: one time',
                ),
              ),
              outliers: orNull(
                record(
                  {
                    observations: list(text('place'), 'beyond the fences of Tukey'),
                    meanWithout: seconds('mean of the others'),
                    cvWithout: number('spread of the others'),
                  },
                  'kept in all other numbers',
                ),
              ),
              trend: orNull(
                record(
                  {
                    slope: seconds('from one time to the next'),
                    change: seconds('from the first to the last'),
                    p: share('chance of it by luck'),
                  },
                  'straight line through the times',
                ),
              ),
              people: orNull(
                record(
                  {
                    people: list(
                      record(
                        { name: text('operator'), n: count('times'), mean: seconds('mean'), sd: orNull(seconds('standard deviation')) },
                        'one operator',
                      ),
                      'as first met',
                    ),
                    p: orNull(share('chance of it by luck, F test')),
                  },
                  'null: one operator or none named',
                ),
              ),
              rounding: orNull(record({ step: number('seconds'), share: share('multiples of it among the times') }, 'null: none shows')),
              onlyRises: flag('as the readings of a watch that runs on'),
              stands: words(['curve', 'values', 'constant', 'mean and spread', 'mean alone'], 'what the distribution is'),
              fits: list(
                record(
                  {
                    family: words(['lognormal', 'gamma', 'weibull'], 'family'),
                    shiftSeconds: seconds('taken off before the fit'),
                    parameters: list(number('lognormal mu, sigma; gamma shape, scale; Weibull shape, scale'), 'two'),
                    aicc: orNull(number('Akaike information, corrected')),
                    andersonDarling: orNull(number('statistic; null: the curve excludes a value')),
                    p: share('share of bootstrap samples as far from their own fit'),
                    samples: count('of the bootstrap'),
                    holds: flag('p at least 0.05'),
                    chosen: flag('it is simulated'),
                  },
                  'one curve',
                ),
                'those that were tried',
              ),
              distribution: distribution('what is simulated, as the engine takes it; seconds'),
              times: list(
                record(
                  {
                    line: count('line or row of the table'),
                    observedSeconds: seconds('as measured'),
                    rating: orNull(number('1: standard pace')),
                    operator: orNull(text('who was timed')),
                    seconds: seconds('with rating and allowance'),
                  },
                  'one time',
                ),
                'in the order in which they were taken',
              ),
            },
            'one task, or one variant of it',
          ),
          'in the order of the table',
        ),
      },
      'What `loopwright times --json` prints.',
    ),
    { distribution: distributionRecordSchema() },
  )
}
