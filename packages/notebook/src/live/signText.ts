/** letters that a sign of a station holds */
const MOST = 3

/**
 * What stands on the small sign of a station: its key, or where that is long its first letter and the capitals and digits after it.
 *
 * @example signText('fitLeft') // => 'fL'
 */
export function signText(key: string): string {
  if (key.length <= MOST) return key
  const initials = key[0]! + key.slice(1).replace(/[^\p{Lu}\d]/gu, '')
  return (initials.length > 1 ? initials : key).slice(0, MOST)
}
