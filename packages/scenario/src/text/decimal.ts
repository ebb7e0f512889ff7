/**
 * Exact decimals: what a person typed, before any rounding. A quantity is digits times a unit factor, rounded to a double once, at the very end,
 * so that `15 m/min` is 0.25 and `78.125 mm` is 0.078125 to the last bit.
 */

/** digits / 10^scale; scale may be negative. */
export interface Decimal {
  readonly digits: bigint
  readonly scale: number
}

const NUMBER = /^([+-]?)(\d+)(?:\.(\d+))?(?:[eE]([+-]?\d+))?$/
/** Beyond this power of ten a double is 0 or infinite, and the exact form would only eat memory. */
const SCALE_MAX = 800

/**
 * Reads a plain decimal number: sign, digits, decimal point, power of ten.
 *
 * @param text  such as `78.125` or `-1e-3`
 * @returns     null if it is not a number of that form, or if its power of ten lies beyond every double
 * @example parseDecimal('78.125')?.scale // => 3
 */
export function parseDecimal(text: string): Decimal | null {
  const match = NUMBER.exec(text)
  if (match === null || text.length > SCALE_MAX) return null
  const [, sign, whole, fraction = '', power = '0'] = match
  const scale = fraction.length - Number(power)
  if (!(Math.abs(scale) <= SCALE_MAX)) return null
  const digits = BigInt(whole + fraction)
  return { digits: sign === '-' ? -digits : digits, scale }
}

export function multiply(a: Decimal, b: Decimal): Decimal {
  return { digits: a.digits * b.digits, scale: a.scale + b.scale }
}

/** 1 − a, for shares. */
export function complement(a: Decimal): Decimal {
  const scale = Math.max(0, a.scale)
  const one = 10n ** BigInt(scale)
  return { digits: one - a.digits * 10n ** BigInt(scale - a.scale), scale }
}

/**
 * The double nearest to `decimal · numerator / denominator`.
 *
 * @param numerator    of the unit's factor
 * @param denominator  of the unit's factor, > 0
 * @returns            correctly rounded (ties to even); infinite beyond the largest double
 */
export function toNumber(decimal: Decimal, numerator = 1n, denominator = 1n): number {
  const up = decimal.scale < 0 ? 10n ** BigInt(-decimal.scale) : 1n
  const down = decimal.scale > 0 ? 10n ** BigInt(decimal.scale) : 1n
  return ratio(decimal.digits * numerator * up, denominator * down)
}

/** Quotient with 66 significant bits and a sticky last one; `Number(bigint)` then rounds it once. Below 2^-1022 it is rounded to a multiple of 2^-1074. */
function ratio(numerator: bigint, denominator: bigint): number {
  if (numerator === 0n) return 0
  if (numerator < 0n) return -ratio(-numerator, denominator)
  const shift = 66 - (bitLength(numerator) - bitLength(denominator))
  if (shift > 1087) return subnormal(numerator, denominator)
  const top = shift > 0 ? numerator << BigInt(shift) : numerator
  const bottom = shift < 0 ? denominator << BigInt(-shift) : denominator
  const quotient = top / bottom
  const sticky = quotient * bottom === top ? quotient : quotient | 1n
  const half = Math.trunc(-shift / 2)
  return Number(sticky) * 2 ** half * 2 ** (-shift - half)
}

function subnormal(numerator: bigint, denominator: bigint): number {
  const top = numerator << 1074n
  const quotient = top / denominator
  const twice = 2n * (top - quotient * denominator)
  const up = twice > denominator || (twice === denominator && quotient % 2n === 1n)
  return Number(up ? quotient + 1n : quotient) * 2 ** -1074
}

function bitLength(value: bigint): number {
  return value.toString(2).length
}

/**
 * Whole numbers in the same proportion, as small as they can be.
 *
 * @param values  each ≥ 0, at least one > 0
 * @example wholeProportion([{ digits: 4n, scale: 1 }, { digits: 2n, scale: 1 }]).join(' : ') // => '2 : 1'
 */
export function wholeProportion(values: readonly Decimal[]): bigint[] {
  const scale = Math.max(0, ...values.map((value) => value.scale))
  const whole = values.map((value) => value.digits * 10n ** BigInt(scale - value.scale))
  const divisor = whole.reduce(greatestCommonDivisor, 0n)
  return divisor === 0n ? whole : whole.map((value) => value / divisor)
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonDivisor(b, a % b)
}

/**
 * A double as text that reads back to the same bits, with the decimal point moved: `shiftPoint(0.6583, 2)` is `65.83`.
 *
 * @param places  how far the point moves to the right, ≥ 0
 * @example shiftPoint(0.6583, 2) // => '65.83'
 */
export function shiftPoint(value: number, places: number): string {
  const decimal = parseDecimal(String(value))
  if (decimal === null) return String(value)
  const scale = decimal.scale - places
  if (decimal.digits === 0n) return '0'
  const digits = decimal.digits.toString()
  if (scale <= 0) return scale < -20 ? `${digits}e${-scale}` : digits + '0'.repeat(-scale)
  if (scale > 30) return `${digits}e-${scale}`
  const negative = digits.startsWith('-')
  const padded = (negative ? digits.slice(1) : digits).padStart(scale + 1, '0')
  const fraction = padded.slice(-scale).replace(/0+$/, '')
  return (negative ? '-' : '') + padded.slice(0, -scale) + (fraction === '' ? '' : `.${fraction}`)
}

/**
 * A share as a percentage that reads back to the same bits.
 *
 * @example percentText(0.6583) // => '65.83 %'
 */
export function percentText(share: number): string {
  return `${shiftPoint(share, 2)} %`
}
