/** The full form of a duration. One entry per kind; limits and shift where a kind has no limits of its own. */
import { z } from 'zod'
import { boolean, choice, duration, either, fraction, keys, list, named, number, text } from './words.ts'

const unit = () => choice(['ms', 's', 'min', 'h'], 'unit of the bare numbers beside it').optional()
const shift = { shift: duration('added to every value').optional() }
const limits = { ...shift, min: duration('values below are cut away').optional(), max: duration('values above are cut away').optional() }
const values = () => list(either('duration', [z.string(), z.number()], 'a time, or a bare number where "unit" is given'), 'times')

const where = () =>
  named(z.union([z.string(), z.number()]), 'only rows that have this in the column named, such as Station: Impeller').optional()

const base = {
  constant: keys({ kind: z.literal('constant'), value: duration(), ...shift }, 'always the same time'),
  uniform: keys({ kind: z.literal('uniform'), min: duration(), max: duration(), ...shift }, 'any time between two, equally likely'),
  triangular: keys(
    { kind: z.literal('triangular'), min: duration(), mode: duration(), max: duration(), ...shift },
    'least, most frequent, greatest time',
  ),
  pert: keys(
    { kind: z.literal('pert'), min: duration(), mode: duration(), max: duration(), ...shift },
    'least, most frequent, greatest time; smoother and narrower than triangular',
  ),
  exponential: keys({ kind: z.literal('exponential'), mean: duration(), ...limits }, 'events without memory, such as failures'),
  lognormal: keys(
    {
      kind: z.literal('lognormal'),
      mean: duration().optional(),
      cv: fraction('standard deviation as a share of the mean').optional(),
      mu: number('mean of the logarithm of the time in "unit"').optional(),
      sigma: number('standard deviation of the logarithm').optional(),
      unit: unit(),
      ...limits,
    },
    'hand work, repairs; by mean and cv, or by mu, sigma and unit',
  ),
  gamma: keys(
    {
      kind: z.literal('gamma'),
      mean: duration().optional(),
      cv: fraction('standard deviation as a share of the mean').optional(),
      shape: number('shape, above 0').optional(),
      scale: duration().optional(),
      ...limits,
    },
    'by mean and cv, or by shape and scale',
  ),
  weibull: keys(
    { kind: z.literal('weibull'), shape: number('shape, above 0'), scale: duration().optional(), mean: duration().optional(), ...limits },
    'wear; by shape and scale, or by shape and mean',
  ),
  empirical: keys(
    {
      kind: z.literal('empirical'),
      values: values().optional(),
      file: text('text', 'a CSV file, relative to the scenario').optional(),
      column: text('text', 'header of the column to take').optional(),
      where: where(),
      unit: unit(),
      interpolate: boolean('draw between the observed values too; default false').optional(),
      ...limits,
    },
    'observed times, drawn at random',
  ),
  discrete: keys(
    {
      kind: z.literal('discrete'),
      values: values(),
      weights: list(number('weight, above 0'), 'one weight per value'),
      unit: unit(),
      ...limits,
    },
    'a few times with their weights',
  ),
  replay: keys(
    {
      kind: z.literal('replay'),
      values: values().optional(),
      file: text('text', 'a CSV file, relative to the scenario').optional(),
      column: text('text', 'header of the column to take').optional(),
      where: where(),
      unit: unit(),
    },
    'observed times in their order, again and again',
  ),
}

interface OccasionalFile {
  kind: 'occasional'
  base: string
  probability: string | number
  of: DistributionFile
}
interface LimitedFile {
  kind: 'limited'
  of: DistributionFile
  shift?: string | undefined
  min?: string | undefined
  max?: string | undefined
}
type BaseFile = { [K in keyof typeof base]: z.input<(typeof base)[K]> }[keyof typeof base]
/** A duration as written: a phrase, or a map with its kind. */
export type DistributionFile = string | BaseFile | OccasionalFile | LimitedFile

const inner: z.ZodType<DistributionFile, DistributionFile> = z.lazy(() => distributionSchema)
const occasional = keys(
  {
    kind: z.literal('occasional'),
    base: duration('every time'),
    probability: fraction('how often the other time comes on top'),
    of: inner,
  },
  'a base time, and now and then another on top',
)
const limited = keys(
  { kind: z.literal('limited'), of: inner, ...limits },
  'another distribution, moved by "shift" and cut at "min" and "max"',
)

const full = z.discriminatedUnion('kind', [
  base.constant,
  base.uniform,
  base.triangular,
  base.pert,
  base.exponential,
  base.lognormal,
  base.gamma,
  base.weibull,
  base.empirical,
  base.discrete,
  base.replay,
  occasional,
  limited,
])

/** What `kind` can be. */
export const KINDS: readonly string[] = [...Object.keys(base), 'occasional', 'limited']

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
