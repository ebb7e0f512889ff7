/** Money as people read it: rounded by its spread, with its currency. */
import { formatNumber, roundedParts } from '@loopwright/charts/table'
import type { Range } from '@loopwright/decide'

/** "105 000 €", rounded by how far it may be off. */
export function moneyText(value: number, currency: string, range: Range | null = null): string {
  const half = range === null ? 0 : (range.p90 - range.p10) / 2
  return `${roundedParts(value, half, 0).value} ${currency}`
}

/** "47 months" */
export const monthsText = (months: number | null): string =>
  months === null ? 'never' : `${formatNumber(months, months < 9.95 ? 1 : 0)} months`

/** "43 to 52" */
export const rangeText = ({ p10, p90 }: Range, decimals: number): string => {
  const [low, high] = [formatNumber(p10, decimals), formatNumber(p90, decimals)]
  return low === high ? low : `${low} to ${high}`
}
