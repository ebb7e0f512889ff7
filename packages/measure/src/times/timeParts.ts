/** What a time study gives to a scenario: the time of each task, by variant, as a file says it, and where it comes from. */
import { writeColumn, writeDistribution } from '@loopwright/scenario'
import type { Distribution } from '@loopwright/stats'
import type { TimeColumn } from './observation.ts'
import type { TaskTimes } from './timeStudy.ts'

/** The time of a task. */
export interface TimePart {
  readonly task: string
  /** as a scenario says it: `50 s ± 12 %`, or `{ byVariant: { … } }` */
  readonly value: string
  /** where it comes from, one line: table, times, curve */
  readonly from: string
}

/** Where the times come from. */
export interface TimeSource {
  /** such as "times.csv" */
  readonly file: string
  /** the values are taken from the table itself, by this column. Default: they are written down */
  readonly column?: TimeColumn | null
}

const DIGITS = 6

/** Numbers that nobody measured to more digits. */
export function roundedTimes(d: Distribution): Distribution {
  const short = (value: unknown): unknown => (typeof value === 'number' ? Number(value.toPrecision(DIGITS)) : value)
  const parts = Object.entries(d).map(([key, value]) => [
    key,
    Array.isArray(value)
      ? value.map(short)
      : value !== null && typeof value === 'object'
        ? roundedTimes(value as Distribution)
        : short(value),
  ])
  return Object.fromEntries(parts) as Distribution
}

/**
 * A part for each task, in the order of the table.
 *
 * @example timeParts([], { file: 'times.csv' }) // => []
 */
export function timeParts(studies: readonly TaskTimes[], { file, column = null }: TimeSource): TimePart[] {
  const tasks = [...new Set(studies.map(({ task }) => task))]
  return tasks.map((task) => {
    const own = studies.filter((one) => one.task === task)
    const each = own.map((one) => {
      const kept = one.stands === 'values' && column !== null
      return { one, written: kept ? fromTable(one, file, column) : writeDistribution(roundedTimes(one.distribution)) }
    })
    const whole = own.length === 1 && own[0]!.variant === null
    const value = whole
      ? each[0]!.written
      : `{ byVariant: { ${each.map(({ one, written }) => `${quoted(one.variant ?? '')}: ${written}`).join(', ')} } }`
    const says = own.map((one) => `${one.variant === null ? '' : `${one.variant}: `}${originOf(one)}`)
    return { task, value, from: `measured, ${file}: ${says.join('; ')}`.replaceAll(/\s+/g, ' ') }
  })
}

/** A name as a key: in quotes, so that no sign in it means anything. */
const quoted = (name: string): string =>
  /^[A-Za-z][\w-]*$/.test(name) && !/^(true|false|null|yes|no)$/i.test(name) ? name : JSON.stringify(name)

function fromTable({ task, variant }: TaskTimes, file: string, { time, task: head, variant: variantHead, unit }: TimeColumn): string {
  const where = { [head]: task, ...(variant === null || variantHead === null ? {} : { [variantHead]: variant }) }
  return writeColumn({ file, column: time, where, unit })
}

/** How a task's time came about. */
function originOf({ n, stands, choice }: TaskTimes): string {
  const times = `${n} time${n === 1 ? '' : 's'}`
  const chosen = choice?.chosen
  if (chosen != null) {
    const { fit, test } = chosen
    return `${times}, ${fit.family}${fit.shift > 0 ? ` above ${fit.shift} s` : ''}, p ${test.pAndersonDarling.toFixed(2)}`
  }
  return `${times}, ${STANDS[stands]}`
}

const STANDS: Readonly<Record<TaskTimes['stands'], string>> = {
  curve: 'a curve',
  values: 'the values themselves',
  constant: 'all equal',
  'mean and spread': 'too few for a shape: lognormal by their mean and spread',
  'mean alone': 'too few for a spread: their mean with a usual spread (common practice, no source)',
}

/** Lines of comment, each of one line whatever stands in it. */
const comments = (heading: readonly string[]): string[] => heading.map((line) => `# ${line.replaceAll(/\s+/g, ' ')}`)

/**
 * The parts as the text of a file: tasks with their times, to be put under the stations of a scenario.
 *
 * @param heading  lines of comment above
 * @example timePartsText([{ task: 'wire', value: '50 s ± 12 %', from: 'measured, t.csv: 9 times' }], ['Times']) // => '# Times\nwire: 50 s ± 12 % # measured, t.csv: 9 times\n'
 */
export function timePartsText(parts: readonly TimePart[], heading: readonly string[]): string {
  const lines = [...comments(heading), ...parts.map(({ task, value, from }) => `${quoted(task)}: ${value} # ${from}`)]
  return `${lines.join('\n')}\n`
}

/**
 * Parts under one key, as the text of a file.
 *
 * @param of       `stops`, …
 * @param heading  lines of comment above
 * @example partsText('stops', [{ name: 'S3 tool', value: '{ at: S3 }', from: 'logged' }], []) // => 'stops:\n  "S3 tool": { at: S3 } # logged\n'
 */
export function partsText(
  of: string,
  parts: readonly { readonly name: string; readonly value: string; readonly from: string }[],
  heading: readonly string[],
): string {
  const lines = [...comments(heading), `${of}:`, ...parts.map(({ name, value, from }) => `  ${quoted(name)}: ${value} # ${from}`)]
  return `${lines.join('\n')}\n`
}
