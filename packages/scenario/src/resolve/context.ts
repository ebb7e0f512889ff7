/** What every step of resolving shares, and the small readers that walk the tree. A reader gives null where there is nothing to go on with; why is in the report. */
import { type Decimal, toNumber } from '../text/decimal.ts'
import type { Entry, Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import { nameFault, nearest } from '@loopwright/line/check'
import type { TableNote } from '../problems/notes.ts'
import { type Dimension, parsePercent, parseQuantity } from '../text/quantity.ts'
import type { Report } from '../problems/report.ts'
import type { FileKey } from '../schema/fileKeys.ts'

export interface Context {
  readonly report: Report
  /** gives the text of a file beside the scenario; null where files cannot be opened */
  readonly files: ((name: string) => string | null) | null
  /** where a value of the complete form came from, by its path there */
  readonly origins: Map<string, string>
  /** columns of files that were read; filled on the way */
  readonly tables: TableNote[]
  /** zones that the file takes out of its loop; filled when the zones are known */
  readonly takenOut: Set<string>
  /** index of each zone by name; filled when the zones are known */
  readonly zoneIndex: Map<string, number>
}

/** The value of a key that the schema knows. */
export function child(at: Located | null | undefined, key: FileKey): Located | null {
  return childNamed(at, key)
}

/** The value of a key whose name is the user's. */
export function childNamed(at: Located | null | undefined, name: string): Located | null {
  return at?.entries.get(name)?.value ?? null
}

/** One value, or the items of a list of them; none where there is nothing. */
export function listed(at: Located | null): readonly Located[] {
  return at === null ? [] : at.kind === 'list' ? at.items : [at]
}

export function entries(at: Located | null | undefined): Entry[] {
  return at === null || at === undefined ? [] : [...at.entries.values()]
}

export function textOf(at: Located | null | undefined): string | null {
  return at?.kind === 'text' ? (at.value as string) : null
}

export function numberOf(at: Located | null | undefined): number | null {
  return at?.kind === 'number' && Number.isFinite(at.value) ? (at.value as number) : null
}

export function booleanOf(at: Located | null | undefined): boolean | null {
  return at?.kind === 'boolean' ? (at.value as boolean) : null
}

/** Reports at the key of an entry. */
export function addAtKey(context: Context, entry: Entry, sentence: say.Sentence): void {
  context.report.addAt(entry.keyStart, entry.keyEnd - entry.keyStart, entry.value.path, sentence)
}

/** Reports where there is no value. */
export function fail(context: Context, at: Located, sentence: say.Sentence): undefined {
  context.report.add(at, sentence)
  return undefined
}

/**
 * A quantity in base units.
 *
 * @param least  'zero': 0 or more; 'above zero': more than 0
 * @returns      undefined where the value is missing or wrong; null for the word "none" where that is allowed
 */
export function quantity(context: Context, at: Located | null, dimension: Dimension, least: 'zero' | 'above zero'): number | undefined {
  const text = textOf(at)
  if (at === null || text === null) return undefined
  const outcome = parseQuantity(text, dimension)
  if (outcome.fault !== null) {
    context.report.add(at, outcome.fault.sentence, outcome.fault.start, outcome.fault.length)
    return undefined
  }
  if (least === 'above zero' && outcome.value === 0) {
    context.report.add(at, say.zero(text))
    return undefined
  }
  return outcome.value
}

/** As `quantity`; the word "none" is null. */
export function quantityOrNone(
  context: Context,
  at: Located | null,
  dimension: Dimension,
  least: 'zero' | 'above zero',
): number | null | undefined {
  return textOf(at) === 'none' ? null : quantity(context, at, dimension, least)
}

/** `15 %` or `0.15`, exactly; undefined where missing or wrong. */
export function fraction(context: Context, at: Located | null, most: 'one' | 'any'): number | undefined {
  if (at === null) return undefined
  const bare = numberOf(at)
  if (bare !== null) {
    if (bare < 0) context.report.add(at, say.negative(at.source))
    else if (most === 'one' && bare > 1) context.report.add(at, say.shareBeyond(at.source))
    else if (bare > 2) context.report.add(at, say.cvBare(at.source))
    else return bare
    return undefined
  }
  const exact = percent(context, at)
  if (exact === undefined) return undefined
  const value = toNumber(exact)
  if (most === 'one' && value > 1) {
    context.report.add(at, say.shareBeyond(String(at.value)))
    return undefined
  }
  if (value > 1000) {
    context.report.add(at, say.beyondReach(String(at.value), '100000 %'))
    return undefined
  }
  return value
}

/** A percentage as an exact share. */
export function percent(context: Context, at: Located | null): Decimal | undefined {
  const text = textOf(at)
  if (at === null || text === null) return undefined
  const outcome = parsePercent(text)
  if (outcome.fault === null) return outcome.value
  context.report.add(at, outcome.fault.sentence, outcome.fault.start, outcome.fault.length)
  return undefined
}

/** With so many findings the nearest word helps nobody, and looking for it takes its time. */
const NEAR_MAX = 100

/** The known word that was most likely meant; null where none is near. */
export function near(context: Context, word: string, known: Iterable<string>): string | null {
  return context.report.count() > NEAR_MAX ? null : nearest(word, known)
}

/** Checks a name where it is declared. */
export function checkName(context: Context, name: string, addProblem: (sentence: say.Sentence) => void): boolean {
  const reason = nameFault(name)
  if (reason !== null) addProblem(say.badName(name, reason))
  return reason === null && context !== null
}

/** Characters of what people call a station, or the scenario; and of its question. */
export const TITLE_MAX = 200
export const QUESTION_MAX = 1000

/** A finding where a text is longer than tables and charts can show. */
export function checkLength(context: Context, at: Located | null, most: number): void {
  const count = textOf(at)?.length ?? 0
  if (at !== null && count > most) context.report.add(at, say.textTooLong(count, most))
}
