/**
 * Names as a sentence lists them; of many the first, and how many more there are.
 *
 * @param most  that are named, ≥ 1; default: all
 * @example namesText(['Z1', 'Z2', 'Z3']) // => 'Z1, Z2 and Z3'
 */
export function namesText(names: readonly string[], most = Number.POSITIVE_INFINITY): string {
  if (names.length > most) return `${names.slice(0, most).join(', ')} and ${names.length - most} more`
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`
}
