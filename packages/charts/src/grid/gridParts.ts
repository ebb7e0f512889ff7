/** Words and places that the pictures of a grid share. */
import type { GridPoint, GridResult } from '@loopwright/study/compare'
import { capital, decimalsFor, formatNumber, formatWithHalfWidth, roundedParts } from '../table/format.ts'
import { carriersText } from '../draw/window.ts'
import { fieldName } from '../table/tableFields.ts'

/** What the pictures need of a grid. */
export type GridNumbers = Pick<GridResult, 'factors' | 'points' | 'base' | 'best' | 'maybeBest' | 'effects'>
type Factor = GridNumbers['factors'][number]

/** The factor of the carriers; its levels are counts. */
export const CARRIERS = 'carriers'

/** Which factor runs along, which across, and which stay as they are in one picture. */
export interface GridSides {
  /** of the first two factors the one with more levels */
  readonly long: number
  /** null: there is one factor */
  readonly short: number | null
  readonly others: readonly number[]
}

/**
 * Sides of the picture.
 *
 * @example gridSides([{ name: 'a', levels: ['1'] }, { name: 'b', levels: ['1', '2'] }]) // => { long: 1, short: 0, others: [] }
 */
export function gridSides(factors: readonly Factor[]): GridSides {
  const others = [...factors.keys()].slice(2)
  if (factors.length < 2) return { long: 0, short: null, others }
  return factors[1]!.levels.length > factors[0]!.levels.length ? { long: 1, short: 0, others } : { long: 0, short: 1, others }
}

/**
 * One level with what it is a level of: "12 carriers", "drive.speed 15 m/min".
 *
 * @example levelWords({ name: 'carriers', levels: ['1', '12'] }, 1) // => '12 carriers'
 */
export function levelWords({ name, levels }: Factor, level: number): string {
  const text = levels[level]!
  return name === CARRIERS ? carriersText(Number(text)) : `${name} ${text}`
}

/**
 * A whole setting: "12 carriers with drive.speed 15 m/min".
 *
 * @param levels  place of the level of each factor
 * @example settingWords([{ name: 'carriers', levels: ['8', '9'] }, { name: 'drive.speed', levels: ['10 m/min', '15 m/min'] }], [1, 0]) // => '9 carriers with drive.speed 10 m/min'
 */
export function settingWords(factors: readonly Factor[], levels: readonly number[]): string {
  const words = factors.map((factor, index) => levelWords(factor, levels[index]!))
  if (factors[0]?.name !== CARRIERS || words.length < 2) return words.join(', ')
  return `${words[0]} with ${words.slice(1).join(', ')}`
}

/** The levels of a factor as numbers, and the unit that they share. */
export interface LevelNumbers {
  readonly values: readonly number[]
  /** '' where they have none */
  readonly unit: string
}

/**
 * Levels that are numbers with one unit; null where they are not.
 *
 * @example levelNumbers(['10 m/min', '12.5 m/min']) // => { values: [10, 12.5], unit: 'm/min' }
 */
export function levelNumbers(levels: readonly string[]): LevelNumbers | null {
  const found = levels.map((level) => /^(-?\d+(?:\.\d+)?)(?:\s*([^\d\s.±].*))?$/u.exec(level.trim()))
  const unit = found[0]?.[2] ?? ''
  if (found.some((match) => match === null || (match[2] ?? '') !== unit)) return null
  return { values: found.map((match) => Number(match![1])), unit }
}

/** Short forms of the levels for an axis, and its title: the shared unit stands once. */
export function axisWords(factor: Factor): { readonly title: string; readonly levels: readonly string[] } {
  const numbers = levelNumbers(factor.levels)
  if (factor.name === CARRIERS) return { title: 'Carriers', levels: factor.levels }
  if (numbers === null || numbers.unit === '') return { title: factor.name, levels: factor.levels }
  return {
    title: `${factor.name} (${numbers.unit})`,
    levels: factor.levels.map((level) => level.trim().split(/\s|(?<=\d)(?=[^\d.])/u)[0]!),
  }
}

/**
 * Names of file columns, each its own.
 *
 * @example fieldNames(['a b', 'a.b']) // => ['a_b', 'a_b_2']
 */
export function fieldNames(words: readonly string[]): string[] {
  const used = new Map<string, number>()
  return words.map((each) => {
    const name = fieldName(each)
    const times = (used.get(name) ?? 0) + 1
    used.set(name, times)
    return times === 1 ? name : `${name}_${times}`
  })
}

/** Mean units of a point; of a single run its own; null: nothing was run. */
export const pointMean = ({ mean, units }: Pick<GridPoint, 'mean' | 'units'>): number | null => mean?.mean ?? units[0] ?? null

/** Mean over all points that have these levels; null where a point has no mean. */
export function meanAt(points: readonly GridPoint[], at: ReadonlyMap<number, number>): number | null {
  const means = points.filter(({ levels }) => [...at].every(([factor, level]) => levels[factor] === level)).map(pointMean)
  if (means.length === 0 || means.some((mean) => mean === null)) return null
  return means.reduce<number>((sum, mean) => sum + mean!, 0) / means.length
}

/**
 * What one factor brings at two levels of another, where that differs most, and whether the difference is shown. Whole sentences.
 *
 * @param per  what one window is called
 * @example interactionWords(await runGrid([2, 3].map((count) => ({ line: withCarriers(line, count), plan: null })), { factors: [{ name: 'carriers', levels: ['2', '3'] }], replications: 5 }, { seed: '1', workers: 0 }), 0, 1, 'shift') // => null
 */
export function interactionWords(
  result: Pick<GridNumbers, 'factors' | 'points' | 'effects'>,
  first: number,
  second: number,
  per: string,
): string | null {
  const found = result.effects?.interactions.find(
    (each) => each.first === Math.min(first, second) && each.second === Math.max(first, second),
  )
  if (found === undefined) return null
  const { factors, points } = result
  const swapped = found.first !== first
  const [from, to, here, there] = swapped
    ? [found.here, found.there, found.from, found.to]
    : [found.from, found.to, found.here, found.there]
  const gain = (at: number): number => {
    const mean = (level: number) =>
      meanAt(
        points,
        new Map([
          [first, level],
          [second, at],
        ]),
      )!
    return mean(to) - mean(from)
  }
  const { difference } = found
  const gains = [gain(here), gain(there)] as const
  const whole = gains.every((value) => Number.isInteger(value))
  const decimals = difference.halfWidth > 0 ? Math.max(0, decimalsFor(difference.halfWidth, 1)) : whole ? 0 : 1
  const size = (value: number): string => formatNumber(Math.abs(value), decimals)
  const units = (value: number): string =>
    size(value) === size(0)
      ? 'nothing'
      : `${size(value)} ${value > 0 ? 'more' : 'fewer'} ${size(value) === '1' ? 'unit' : 'units'} a ${per}`
  const [a, b] = [factors[first]!, factors[second]!]
  const what = `what ${factorWords(a)} ${bring(a)}`
  const averaged = factors.length > 2 ? ', averaged over the other factors' : ''
  if (difference.status === 'identical in every replication') return `${capital(what)} does not depend on ${levelKind(b)}${averaged}.`
  if (difference.status === 'no difference shown') {
    const most = formatNumber(Math.max(Math.abs(difference.low), Math.abs(difference.high)), decimals)
    return `That ${what} depends on ${levelKind(b)} is not shown: by ${most} units a ${per} at most${averaged}.`
  }
  const greatest = Math.max(...points.map(({ mean }) => mean?.mean ?? 0))
  const hardly = Math.abs(difference.mean) < HARDLY * greatest ? 'hardly ' : ''
  const by = difference.halfWidth > 0 ? `, by ${size(difference.mean)}${limitWords(difference, size)}` : ''
  return `Going from ${a.levels[from]} to ${levelWords(a, to)} brings ${units(gains[0])} with ${levelWords(b, here)}, and ${units(gains[1])} with ${levelWords(b, there)}${averaged}: ${what} ${hardly}depends on ${levelKind(b)}${by}.`
}

/** " (99.9 %: 1 to 7)", without signs, the smaller first. */
function limitWords(
  { level, low, high }: { readonly level: number; readonly low: number; readonly high: number },
  size: (value: number) => string,
): string {
  const [near, far] = [Math.abs(low), Math.abs(high)].sort((one, other) => one - other)
  return ` (${formatNumber(Math.floor(level * 1000 + 1e-9) / 10, 1)} %: ${size(near!)} to ${size(far!)})`
}

/** a dependence of less than this share of the greatest output is called hardly any */
const HARDLY = 0.01

/** What it is a level of, as something that others depend on. */
const levelKind = ({ name }: Factor): string => (name === CARRIERS ? 'the number of carriers' : name)
const bring = (factor: Factor): string => (factor.name === CARRIERS ? 'bring' : 'brings')

/** "more carriers", "drive.speed". */
const factorWords = ({ name }: Factor): string => (name === CARRIERS ? 'more carriers' : name)

/**
 * "334 ± 1"; without chance the number alone.
 *
 * @example unitsText({ mean: null, units: [412] }) // => '412'
 */
export function unitsText({ mean, units }: Pick<GridPoint, 'mean' | 'units'>): string {
  return mean === null ? meanText({ mean, units }) : formatWithHalfWidth(mean.mean, mean.halfWidth)
}

/** The same without the half-width: "334". */
export function meanText({ mean, units }: Pick<GridPoint, 'mean' | 'units'>): string {
  if (mean !== null) return roundedParts(mean.mean, mean.halfWidth).value
  return units[0] === undefined ? '–' : formatNumber(units[0], 0)
}
