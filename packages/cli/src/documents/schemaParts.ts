/** Parts of which the JSON Schemas (draft 7) of the `--json` documents are made. */
import { CONTROL_NAMES } from '@loopwright/study'

export type Schema = Readonly<Record<string, unknown>>

export const number = (description: string): Schema => ({ type: 'number', description })
export const count = (description: string): Schema => ({ type: 'integer', minimum: 0, description })
export const share = (description: string): Schema => ({ type: 'number', minimum: 0, maximum: 1.000000001, description })
export const text = (description: string): Schema => ({ type: 'string', description })
export const flag = (description: string): Schema => ({ type: 'boolean', description })
export const only = (value: string | number, description: string): Schema => ({ const: value, description })
export const words = (values: readonly string[], description: string): Schema => ({ enum: [...values], description })
export const list = (items: Schema, description: string): Schema => ({ type: 'array', items, description })
export const orNull = (schema: Schema): Schema => {
  const { description, ...rest } = schema
  return { description, anyOf: [rest, { type: 'null' }] }
}
/** All fields are there, and no others. */
export const record = (fields: Readonly<Record<string, Schema>>, description: string): Schema => ({
  type: 'object',
  description,
  properties: fields,
  required: Object.keys(fields),
  additionalProperties: false,
})
/** One number per state, by its name. */
export const byName = (names: readonly string[], each: Schema, description: string): Schema =>
  record(Object.fromEntries(names.map((name) => [name, each])), description)
/** Names that the scenario gives. */
export const map = (each: Schema, description: string): Schema => ({ type: 'object', additionalProperties: each, description })

/** A number with its interval. */
export const meanInterval = (of: string): Schema =>
  record(
    {
      n: count('independent replications'),
      mean: number(of),
      sd: number('standard deviation between replications, divisor n − 1'),
      level: share('confidence level of low … high'),
      halfWidth: number('half of the interval, Student t'),
      low: number('lower limit of the mean'),
      high: number('upper limit of the mean'),
      status: words(['ok', 'few replications', 'no spread'], 'few replications: the interval rests on the normal shape'),
    },
    `${of}: mean over replications and its interval`,
  )

/** A number with its interval, where the shape may be skewed. */
export const outputInterval = (of: string): Schema =>
  record(
    {
      n: count('independent replications'),
      mean: number(of),
      sd: number('standard deviation between replications, divisor n − 1'),
      level: share('confidence level of low … high'),
      halfWidth: number('the greater of mean − low and high − mean'),
      low: number('lower limit of the mean'),
      high: number('upper limit of the mean'),
      skewness: orNull(number('of the replications; null below 3 of them or without spread')),
      method: words(
        ['Hall', 'Student t', 'none needed'],
        'Hall: Student t transformed by the skewness; Student t: below 10 replications; none needed: no spread',
      ),
      status: words(
        ['ok', 'few replications', 'skewed', 'no spread'],
        'few replications: the interval rests on the normal shape; skewed: too few for so skewed a shape, it may promise too much',
      ),
    },
    `${of}: mean over replications and its interval`,
  )

/** A mean with the luck of its worlds taken out. */
export const shownMean = (): Schema =>
  record(
    {
      n: count('independent replications'),
      mean: number('output per window, units, estimated by regression on the controls'),
      level: share('confidence level of low … high'),
      halfWidth: number('half of the interval, Student t'),
      low: number('lower limit of the mean'),
      high: number('upper limit of the mean'),
      controls: list(words(CONTROL_NAMES, 'whose luck'), 'quantities whose mean is known, by the streams of each world'),
      batches: count('equal groups of replications that the regression is made of'),
      worth: orNull(number('so many plain replications know the mean as well; null: nothing else is left to chance')),
    },
    'the same mean with the luck of its worlds taken out (control variates); null where that is not shown to help',
  )

/** Whether a chance is nine of ten. */
export const verdict = (of: string, more: Readonly<Record<string, Schema>> = {}): Schema =>
  record(
    {
      ...more,
      verdict: words(
        ['met', 'not met', 'about', 'open'],
        'met, not met: the whole interval is at or above the border, or below it; about: known to ± 2 points; open: too few windows to say',
      ),
      border: share('nine of ten'),
      successes: count('windows in which it was so'),
      n: count('windows looked at'),
      share: share('successes/n'),
      low: share('lower limit'),
      high: share('upper limit'),
      level: share('confidence level of low … high'),
      method: words(
        ['fixed n', 'looks', 'no chance'],
        'looks: one of several looks, which share one chance of error; no chance: every run is the same',
      ),
    },
    of,
  )

export const planAnswer = (): Schema =>
  orNull(
    record(
      {
        carriers: orNull(count('fewest carriers shown to meet the plan in nine of ten windows; null: none is')),
        about: orNull(count('fewest below that whose chance is about nine of ten')),
        open: list(count('carriers'), 'below that, too few windows to say'),
        best: orNull(count('carriers with the highest lower limit of the chance; null: no window met the plan')),
        settled: flag('the count that decides and its neighbours are not open'),
        counts: list(
          verdict('one number of carriers', {
            carriers: count('number'),
            stoodStill: count('runs that ended in gridlock; such a count is never chosen'),
          }),
          'by carriers, ascending',
        ),
      },
      'which numbers of carriers meet the plan in nine of ten windows; null without a plan',
    ),
  )

export const quantile = (of: string): Schema =>
  record(
    {
      p: share('which quantile'),
      n: count('independent replications'),
      level: share('confidence level asked for'),
      point: number('estimate (type 7)'),
      low: orNull(number('order statistic below; null: too few replications')),
      high: orNull(number('order statistic above; null: too few replications')),
      coverage: share('real confidence of the limits'),
      status: words(['ok', 'one limit', 'no limit'], 'whether both limits are known'),
    },
    of,
  )

export const chance = (of: string): Schema =>
  record(
    {
      successes: count('windows in which it was so'),
      n: count('windows simulated'),
      level: share('confidence level of low … high'),
      share: share('successes/n'),
      low: share('Clopper–Pearson lower limit'),
      high: share('Clopper–Pearson upper limit'),
      status: words(['ok', 'few', 'every one', 'none'], 'few: too few windows to promise anything'),
    },
    of,
  )

export const tally = (of: string): Schema =>
  record(
    {
      count: count('how many'),
      mean: orNull(number('seconds')),
      sd: orNull(number('seconds; null below two')),
      min: orNull(number('seconds')),
      max: orNull(number('seconds')),
    },
    of,
  )

export const stops = (of: string, fields: Readonly<Record<string, Schema>> = {}): Schema =>
  list(record({ cause: text('name of the breakdown source, or break'), seconds: number('seconds per window'), ...fields }, 'one cause'), of)

/** A distribution as the engine takes it, of a document that defines it. */
export const distribution = (description: string): Schema => ({ allOf: [{ $ref: '#/definitions/distribution' }], description })

/** A whole document: its schema with what it is called, and what it refers to. */
export const documentSchema = (title: string, schema: Schema, definitions?: Readonly<Record<string, object>>): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title,
  ...schema,
  ...(definitions === undefined ? {} : { definitions }),
})
