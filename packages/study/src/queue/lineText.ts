/** A line as text that travels: JSON, with the numbers that JSON does not know. */
import type { LineSpec } from '@loopwright/line'

const NAME = 'number that JSON lacks'

/**
 * Every bit of every number comes back from it.
 *
 * @example readLineText(lineText(line)).zones.length // => 8
 */
export const lineText = (spec: LineSpec): string =>
  JSON.stringify(spec, (_, value: unknown) =>
    typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))
      ? { [NAME]: Object.is(value, -0) ? '-0' : String(value) }
      : value,
  )

/**
 * The line of a text.
 *
 * @throws SyntaxError  where the text is no JSON
 */
export const readLineText = (text: string): LineSpec =>
  JSON.parse(text, (_, value: unknown) =>
    typeof value === 'object' && value !== null && NAME in value ? Number((value as Record<string, unknown>)[NAME]) : value,
  ) as LineSpec
