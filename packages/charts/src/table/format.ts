/** Numbers as people read them: rounded by their interval, thin spaces between thousands, units beside them. */

/** no-break, narrow */
const THIN = '\u202f'
const MINUS = '\u2212'

/**
 * A number with thin spaces between thousands.
 *
 * @param decimals  digits after the point, 0 … 20; below 0: rounded to tens, hundreds …
 * @throws RangeError   if the value is not finite
 * @example formatNumber(1234.56, 1) // => '1\u202f234.6'
 */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot write ${value} as a number`)
  const tens = 10 ** Math.max(0, -decimals)
  const size = decimals < 0 ? Math.round(Math.abs(value) / tens) * tens : Math.abs(value)
  const [whole, fraction] = size.toFixed(Math.max(0, decimals)).split('.')
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, THIN)
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`
  return value < 0 && /[1-9]/.test(digits) ? MINUS + digits : digits
}

/**
 * How many decimals an interval of this half-width leaves: one digit of the half-width, two where it starts with 1 or 2.
 *
 * @param decimalsMax   never more than these
 * @example decimalsFor(0.04) // => 2
 */
export function decimalsFor(halfWidth: number, decimalsMax = 3): number {
  if (!(halfWidth > 0)) return decimalsMax
  const exponent = Math.floor(Math.log10(halfWidth) + 1e-12)
  const leading = Math.round(halfWidth / 10 ** exponent)
  return Math.min(decimalsMax, leading <= 2 ? 1 - exponent : 0 - exponent)
}

/**
 * Decimals of a difference of units: one at most, by its interval; none for whole units without one.
 *
 * @example differenceDecimals(-36, 0) // => 0
 */
export function differenceDecimals(mean: number, halfWidth: number): number {
  return halfWidth === 0 && Number.isInteger(mean) ? 0 : Math.max(0, decimalsFor(halfWidth, 1))
}

/**
 * A mean and the half-width of its interval, both rounded by the half-width; the mean alone where there is no chance in it.
 *
 * @param decimalsMax   default: as of counts of units, which are whole from 20 on
 * @example formatWithHalfWidth(330.2133, 0.86) // => '330 ± 1'
 */
export function formatWithHalfWidth(value: number, halfWidth: number, decimalsMax = unitDecimals(value, halfWidth)): string {
  return withHalf(roundedParts(value, halfWidth, decimalsMax))
}

/**
 * A difference of units and the half-width of its interval: one decimal at most, none but whole units.
 *
 * @example formatDifference({ mean: -7.84, halfWidth: 1.21 }) // => '−7.8 ± 1.2'
 */
export function formatDifference(difference: { readonly mean: number; readonly halfWidth: number }): string {
  return withHalf(differenceParts(difference))
}

/** Two numbers of one rounding; `half` is null where there is no chance in the first. */
export interface RoundedParts {
  readonly value: string
  readonly half: string | null
}

/**
 * Both as one text.
 *
 * @example withHalf({ value: '330', half: '1' }) // => '330 ± 1'
 */
export function withHalf({ value, half }: RoundedParts): string {
  return half === null ? value : `${value} ± ${half}`
}

/**
 * The two numbers of `formatDifference` apart.
 *
 * @example differenceParts({ mean: -7.84, halfWidth: 1.21 }) // => { value: '−7.8', half: '1.2' }
 */
export function differenceParts({ mean, halfWidth }: { readonly mean: number; readonly halfWidth: number }): RoundedParts {
  const decimals = differenceDecimals(mean, halfWidth)
  return {
    value: formatNumber(mean, decimals),
    half: halfWidth > 0 ? formatNumber(Math.max(halfWidth, 10 ** -decimals), decimals) : null,
  }
}

/**
 * The two numbers of `formatWithHalfWidth` apart.
 *
 * @example roundedParts(330.2133, 0.86) // => { value: '330', half: '1' }
 */
export function roundedParts(value: number, halfWidth: number, decimalsMax = unitDecimals(value, halfWidth)): RoundedParts {
  const decimals = decimalsFor(halfWidth, decimalsMax)
  return {
    value: formatNumber(value, decimals),
    half: halfWidth === 0 ? null : formatNumber(Math.max(halfWidth, 10 ** -decimals), decimals),
  }
}

/** A mean of few units is not known by its whole ones: 5.7 ± 0.2 boats a week. */
const unitDecimals = (value: number, halfWidth: number): number => (halfWidth > 0 && Math.abs(value) < 20 ? 1 : 0)

/**
 * As a sentence begins.
 *
 * @example capital('the order given') // => 'The order given'
 */
export function capital(text: string): string {
  return text === '' ? '' : `${text[0]!.toUpperCase()}${text.slice(1)}`
}

/**
 * A share in per cent; never "0 %" or "100 %" of what is not all or nothing.
 *
 * @param share 0 … 1
 * @example formatShare(0.834) // => '83 %'
 */
export function formatShare(share: number): string {
  return `${percent(share)}${THIN}%`
}

/**
 * The number of `formatShare` alone, for columns whose head says "%".
 *
 * @example percent(0.004) // => '< 1'
 */
export function percent(share: number): string {
  if (share > 0 && share < 0.005) return '< 1'
  if (share < 1 && share >= 0.995) return '> 99'
  return formatNumber(share * 100, 0)
}

/**
 * Seconds in the unit that reads best; from 2 h on hours and minutes, rounded to the minute.
 *
 * @param seconds   ≥ 0
 * @example formatDuration(30_000) // => '8 h 20 min'
 */
export function formatDuration(seconds: number): string {
  if (seconds < 120) return `${trimmed(seconds, seconds < 10 ? 2 : 1)} s`
  if (seconds < 7200) return `${trimmed(seconds / 60, 1)} min`
  const minutes = Math.round(seconds / 60)
  const hours = `${formatNumber(Math.floor(minutes / 60), 0)} h`
  return minutes % 60 === 0 ? hours : `${hours} ${minutes % 60} min`
}

/**
 * Seconds to be added and compared: one decimal, two where what they are part of is below 10 s; from 2 h on as a duration.
 *
 * @param seconds   ≥ 0
 * @param of        seconds of the whole that they are part of
 * @example formatSeconds(58.42) // => '58.4 s'
 */
export function formatSeconds(seconds: number, of = seconds): string {
  return of < 7200 ? `${trimmed(seconds, of < 10 ? 2 : 1)} s` : formatDuration(seconds)
}

/**
 * Units per hour: one decimal; two where there is less than one, three below a tenth, none from a thousand on.
 *
 * @param perHour   ≥ 0
 * @example formatPerHour(0.16) // => '0.16'
 */
export function formatPerHour(perHour: number): string {
  if (perHour <= 0) return formatNumber(0, 1)
  return formatNumber(perHour, perHour < 0.0995 ? 3 : perHour < 0.995 ? 2 : perHour < 999.95 ? 1 : 0)
}

/** The unit of times that stand below each other, and their texts. */
export interface TimeScale {
  readonly unit: 's' | 'h'
  /** "Seconds", "Hours" */
  readonly name: string
  readonly text: (seconds: number) => string
}

/**
 * One unit for all times of a table: seconds with as many decimals as asked, hours where the longest is two hours or more.
 *
 * @param seconds   each ≥ 0
 * @param decimals  of seconds
 * @example timeScale([39_600, 210]).text(39_600) // => '11.00'
 */
export function timeScale(seconds: readonly number[], decimals: number): TimeScale {
  const inHours = seconds.some((one) => one >= 7200)
  return inHours
    ? { unit: 'h', name: 'Hours', text: (one) => formatNumber(one / 3600, 2) }
    : { unit: 's', name: 'Seconds', text: (one) => formatNumber(one, decimals) }
}

/**
 * A stretch of time on one clock.
 *
 * @param fromSeconds  ≥ 0
 * @example formatStretch(60, 660) // => '1 to 11 min'
 */
export function formatStretch(fromSeconds: number, toSeconds: number): string {
  if (toSeconds >= 7200) return `${formatDuration(fromSeconds)} to ${formatDuration(toSeconds)}`
  return `${trimmed(fromSeconds / 60, 1)} to ${trimmed(toSeconds / 60, 1)} min`
}

/**
 * Minutes of a count of seconds: one decimal below 10 minutes, none above; a little is not nothing.
 *
 * @example formatMinutes(1290) // => '22'
 */
export function formatMinutes(seconds: number): string {
  const minutes = seconds / 60
  if (minutes > 0 && minutes < 0.05) return '< 0.1'
  return formatNumber(minutes, minutes < 9.95 ? 1 : 0)
}

/** without zeros at the end of a fraction */
function trimmed(value: number, decimals: number): string {
  return formatNumber(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')
}
