/**
 * A number of units as it is told, with its noun.
 *
 * @param size  as text: "1", "7.8", "110 ± 5"
 * @param more  stands between both: "more", "fewer"
 * @example unitsOf('1', 'more') // => '1 more unit'
 */
export function unitsOf(size: string, more = ''): string {
  return `${size} ${more === '' ? '' : `${more} `}${size === '1' ? 'unit' : 'units'}`
}
