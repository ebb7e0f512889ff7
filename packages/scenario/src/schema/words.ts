/** Building blocks of the schema. An error message that begins with `@` names what was expected; shape.ts turns it into a sentence. */
import * as z from 'zod'

// zod makes functions from text where it may; the policy of a page allows none, and would tell of the try
z.config({ jitless: true })

/** What a place of the file takes, as one word for shape.ts and as a sentence for editors. */
export const EXPECTED = {
  text: 'a text',
  name: 'a name as text',
  titled: 'a name as text, or { name: …, title: … }',
  boolean: '"true" or "false"',
  map: 'a set of keys with values',
  tasks: 'tasks with their times, such as { fit: 45 s }',
  operator: 'the stations of a person, such as { stations: [S1, S3] }',
  stations: 'stations by name, such as "S1: { zone: Z01, work: { fit: 45 s } }"',
  stops: 'stops by name, such as "tool: { at: S1, after: exponential 90 min, lasts: 4 min }"',
  list: 'a list',
  count: 'a whole number',
  number: 'a number',
  duration: 'a time with its unit, such as "45 s"',
  length: 'a length with its unit, such as "1.5 m"',
  speed: 'a speed with its unit, such as "15 m/min"',
  acceleration: 'an acceleration with its unit, such as "0.4 m/s²"',
  distribution: 'a time, such as "45 s" or "45 s ± 15 %", or a set of keys with its "kind"',
  taskTime: 'a time, such as "45 s ± 15 %", or { mean: …, cv: … }, or { byVariant: … }',
  timeByVariant: 'a time, such as "45 s", or one for each variant',
  share: 'a share, such as "40 %", or a whole weight',
  percent: 'a percentage, such as "30 %"',
  fraction: 'a share, such as "15 %" or 0.15',
  putIn: 'a set of keys such as { before: S3, zones: 2 }, or a list of them',
  loop: 'a phrase such as "22 zones of 1.5 m", or a list of zones',
  clock: 'a time of day in quotes, such as "06:00"',
  part: 'the name of a part, such as "S6", or a list of names',
  start: '"spread", "packed", "store" or a list of zones',
  supply: '"always", or { every: … } or { times: … }, with its "queue"',
  merge: '"waiting", "alternate" or { priority: [zones] }',
  path: 'a set of keys, or zones in a row such as "Z01 > Z02 > Z03"',
  crews: '"unlimited" or a whole number',
  queue: '"unlimited" or a whole number',
  variants: 'shares by variant, or a list of names',
  mix: '"random", "levelled" or a set of keys with its "kind"',
  corners: 'a set of keys, or a list of them',
  rate: 'a rate, such as "320 per shift"',
  chance: 'a chance, such as "1.5 per 100 cycles"',
  value: 'a value',
} as const

export type Expected = keyof typeof EXPECTED

const tag = (expected: Expected) => ({ error: () => `@${expected}` })

export const text = (expected: Expected = 'text', description: string = EXPECTED[expected]) => z.string(tag(expected)).meta({ description })

export const name = (description = 'a name, unique among its kind, without "/"') => text('name', description)
export const duration = (description?: string) => quantity('duration', ['45 s', '1.5 min', '7.5 h'], description)
export const length = (description?: string) => quantity('length', ['1.5 m', '78 mm', '4 ft'], description)
export const speed = (description?: string) => quantity('speed', ['15 m/min', '0.25 m/s'], description)
export const acceleration = (description?: string) => quantity('acceleration', ['0.4 m/s²', '0.4 m/s2'], description)

function quantity(expected: Expected, examples: string[], description: string = EXPECTED[expected]) {
  return z.string(tag(expected)).meta({ description, examples })
}

export const boolean = (description: string) => z.boolean(tag('boolean')).meta({ description })
export const count = (description: string, most = 1_000_000) => z.int(tag('count')).min(1).max(most).meta({ description })
/** A whole number that may be 0. */
export const whole = (description: string, most = 1_000_000) => z.int(tag('count')).min(0).max(most).meta({ description })
export const number = (description: string) => z.number(tag('number')).meta({ description })
export const choice = <const T extends readonly string[]>(values: T, description: string) => z.enum(values).meta({ description })

export const either = <const T extends readonly [z.ZodType, z.ZodType, ...z.ZodType[]]>(
  expected: Expected,
  options: T,
  description: string = EXPECTED[expected],
) => z.union(options, tag(expected)).meta({ description })

export const list = <T extends z.ZodType>(item: T, description: string) => z.array(item, tag('list')).meta({ description })

/** Values by name; the names are the user's. */
export const named = <T extends z.ZodType>(value: T, description: string, expected: Expected = 'map') =>
  z.record(z.string(), value, tag(expected)).meta({ description })

const known = new WeakMap<readonly string[], readonly string[]>()

/** Of an issue about keys that nobody knows: the keys that would do. @param strangers  `keys` of the issue, the list itself */
export const knownBeside = (strangers: readonly string[]): readonly string[] => known.get(strangers) ?? []

/** Known keys only; of an unknown one `knownBeside` tells what would do. */
export function keys<T extends z.core.$ZodLooseShape>(shape: T, description: string, expected: Expected = 'map') {
  const own = Object.keys(shape)
  const error = (issue: { readonly code?: string; readonly keys?: unknown }): string => {
    if (issue.code === 'unrecognized_keys') known.set(issue.keys as readonly string[], own)
    return `@${expected}`
  }
  return z.strictObject(shape, { error }).meta({ description })
}

export const fraction = (description: string) => either('fraction', [z.string(), z.number()], description)
