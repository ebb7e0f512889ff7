/** What is said of runs whose list of products ran out before their end. */
import { type LineSpec, listWords } from '@loopwright/line'
import { type CautionCell, warningCell } from '../cells/cell.ts'
import type { Period } from '../sweep/period.ts'
import { listLines } from './listLines.ts'
import { markdownOf } from './markdownOf.ts'

/** Runs of one line or count that may have run out of products. */
export interface ListEnds {
  /** "8 carriers", a line in quotation marks; it begins an item of a list */
  readonly name: string
  readonly line: Pick<LineSpec, 'stations'>
  readonly outOfProducts: number
  readonly runs: number
}

/** items that are named */
const NAMED_MAX = 8

/**
 * A warning where the list ran out in some run, and why the last products stay on the line; empty where none did.
 *
 * @param all  everything that was run, so that what holds for all is said once
 */
export function listEndsWarning(
  id: string,
  all: readonly ListEnds[],
  { one, many, line }: Pick<Period, 'one' | 'many' | 'line'>,
): CautionCell[] {
  const ended = all.filter(({ outOfProducts }) => outOfProducts > 0)
  if (ended.length === 0) return []
  const everywhere = all.every(({ outOfProducts, runs }) => outOfProducts === runs)
  const where = everywhere
    ? '.'
    : `:\n\n${listLines(
        ended.map(({ name, outOfProducts, runs }) => `${markdownOf(name)}: in ${outOfProducts} of ${runs} ${many}`),
        NAMED_MAX,
      )}\n\n`
  const numbers = `${everywhere ? ' ' : ''}The numbers are those of the list, not of the ${line}.`
  const held = [...new Set(ended.map(({ line: { stations } }) => heldBack(holders(stations))))].join('')
  return [warningCell(id, 'Out of products', `The list of products ran out before the end of the ${one}${where}${numbers}${held}`)]
}

/** Stations that take a product off and then wait, in the way of those behind, for one to load. (MODEL.md §5) */
function holders(stations: LineSpec['stations']): string[] {
  return stations.filter(({ unload, load }) => unload !== null && load !== null).map(({ name }) => name)
}

/** Why the last products stay on the line; '' where no station holds them back. */
export function heldBack(names: readonly string[]): string {
  if (names.length === 0) return ''
  const takes =
    names.length === 1
      ? 'takes a product off and loads the next one in one stay'
      : 'each take a product off and load the next one in one stay'
  return ` ${listWords([...names])} ${takes}: a carrier there now waits for a product, so that carriers behind do not come up, and any product on them stays on the line.`
}
