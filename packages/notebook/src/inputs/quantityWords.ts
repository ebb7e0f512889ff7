/** Inputs in the units of the shop floor, with the digits that the file gave and no more. */
import { formatNumber } from '@loopwright/charts/table'

/**
 * A number with at most `digits` significant digits and no idle zeros.
 *
 * @example shortNumber(0.15, 4) // => '0.15'
 */
export function shortNumber(value: number, digits = 4): string {
  if (value === 0) return '0'
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))))
  const text = formatNumber(value, Math.min(decimals, 20))
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

/**
 * A duration in the unit that reads best.
 *
 * @param seconds  ≥ 0
 * @example secondsText(0.15) // => '0.15 s'
 */
export function secondsText(seconds: number): string {
  if (seconds < 120) return `${shortNumber(seconds)} s`
  if (seconds < 36_000) return `${shortNumber(seconds / 60)} min`
  return `${shortNumber(seconds / 3600)} h`
}

/** @example metresText(0.078125) // => '78.13 mm' */
export function metresText(metres: number): string {
  return metres !== 0 && metres < 0.5 ? `${shortNumber(metres * 1000)} mm` : `${shortNumber(metres)} m`
}

/** @example speedText(0.25) // => '15 m/min' */
export function speedText(metresPerSecond: number): string {
  return `${shortNumber(metresPerSecond * 60)} m/min`
}

/** @example shareText(0.125) // => '12.5 %' */
export function shareText(share: number): string {
  return `${shortNumber(share * 100, 3)} %`
}

/**
 * Values of many parts in one phrase: the one they share, or their span; `none` where all are null.
 *
 * @example spanText([2, 2, 3], (value) => `${value} s`, 'none') // => '2 s to 3 s'
 */
export function spanText(values: readonly (number | null)[], text: (value: number) => string, none: string): string {
  const known = values.filter((value) => value !== null)
  if (known.length === 0) return none
  const [least, most] = [text(Math.min(...known)), text(Math.max(...known))]
  const span = least === most ? least : `${least} to ${most}`
  return known.length === values.length ? span : `${span}, where given`
}
