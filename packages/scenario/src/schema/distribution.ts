/** The full form of a duration, made from what each kind says of its fields; and what files may say instead of them, or beside them. */
import { type DistributionForm, distributionKinds, type FieldIs } from '@loopwright/stats'
import * as z from 'zod'
import { boolean, choice, duration, either, fraction, keys, list, named, number, text } from './words.ts'

const unit = () => choice(['ms', 's', 'min', 'h'], 'unit of the bare numbers beside it').optional()
const shift = { shift: duration('added to every value').optional() }
const limits = { ...shift, min: duration('values below are cut away').optional(), max: duration('values above are cut away').optional() }
const values = () => list(either('duration', [z.string(), z.number()], 'a time, or a bare number where "unit" is given'), 'times')

const where = () =>
  named(z.union([z.string(), z.number()]), 'only rows that have this in the column named, such as Station: Impeller').optional()

/** A duration as written: a phrase, or a map with its kind. */
export type DistributionFile = string | { readonly kind: string; readonly [field: string]: unknown }

const inner: z.ZodType<DistributionFile, DistributionFile> = z.lazy(() => distributionSchema)

/** What a file may say for a field, by what it is. */
const WRITTEN: { readonly [Is in FieldIs]: (says?: string) => z.ZodType } = {
  value: duration,
  positive: duration,
  extra: (says) => duration(says).optional(),
  limit: (says) => duration(says).optional(),
  values,
  share: (says = '') => fraction(says),
  ratio: (says = '') => fraction(says),
  number: (says = '') => number(says),
  numbers: (says = '') => list(number('weight, above 0'), says),
  flag: (says = '') => boolean(says).optional(),
  distribution: () => inner,
}

/** Times that may come from a column of a file. */
const fromFile = {
  values: values().optional(),
  file: text('text', 'a CSV file, relative to the scenario').optional(),
  column: text('text', 'header of the column to take').optional(),
  where: where(),
  unit: unit(),
}

/** A second way to say it: `fields` in place of those named, one way or the other whole. */
const OTHERWISE: Readonly<Record<string, { readonly of: readonly string[]; readonly fields: z.core.$ZodLooseShape }>> = {
  lognormal: {
    of: ['mean', 'cv'],
    fields: {
      mu: number('mean of the logarithm of the time in "unit"').optional(),
      sigma: number('standard deviation of the logarithm').optional(),
      unit: unit(),
    },
  },
  gamma: { of: ['mean', 'cv'], fields: { shape: number('shape, above 0').optional(), scale: duration().optional() } },
  weibull: { of: ['scale'], fields: { mean: duration().optional() } },
}

/** `shift`, `min` and `max` beside a kind; without a row all three, and of a kind that has its own ends the shift alone. */
const CUTS: Readonly<Record<string, 'shift' | 'none'>> = { constant: 'shift', replay: 'none', occasional: 'none', limited: 'none' }

/** Which of `shift`, `min` and `max` may stand beside a kind. */
export function cutsOf({ kind, fields }: Pick<DistributionForm, 'kind' | 'fields'>): 'all' | 'shift' | 'none' {
  return CUTS[kind] ?? ('min' in fields ? 'shift' : 'all')
}

function formOf({ kind, fields, says }: DistributionForm) {
  const otherwise = OTHERWISE[kind]
  const own = Object.entries(fields).map(([name, [is, of]]): [string, z.ZodType] => {
    const written = WRITTEN[is](of)
    return [name, otherwise?.of.includes(name) ? written.optional() : written]
  })
  const lists = Object.values(fields).some(([is]) => is === 'values')
  const cuts = cutsOf({ kind, fields })
  return keys(
    {
      kind: z.literal(kind),
      ...Object.fromEntries(own),
      ...(kind === 'empirical' || kind === 'replay' ? fromFile : lists ? { unit: unit() } : {}),
      ...otherwise?.fields,
      ...(cuts === 'all' ? limits : cuts === 'shift' ? shift : {}),
    },
    says,
  )
}

const [first, ...others] = distributionKinds().map(formOf)
const full = z.discriminatedUnion('kind', [first!, ...others])

/** A phrase, or the full form. */
export const distributionSchema: z.ZodType<DistributionFile, DistributionFile> = either('distribution', [z.string(), full]).meta({
  id: 'duration',
}) as never

const title = () => text('text', 'what people call the task; default: its name').optional()
/** A task's time: for all variants, by mean per variant with one cv, or by variant. */
export const taskTimeSchema = either('taskTime', [
  distributionSchema,
  keys(
    {
      mean: either('timeByVariant', [z.string(), named(duration(), 'mean by variant; "none" where a variant has no such task')]),
      cv: fraction('standard deviation as a share of the mean').optional(),
      title: title(),
    },
    'lognormal by mean and cv',
  ),
  keys(
    { byVariant: named(distributionSchema, 'time by variant; "none" where a variant has no such task'), title: title() },
    'a distribution for each variant',
  ),
  keys({ time: distributionSchema, title: title() }, 'a time for all variants, with a title'),
]).meta({ id: 'taskTime' })
