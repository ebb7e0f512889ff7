/**
 * Items as a sentence lists them; of many the first, and how many more there are.
 *
 * @param most  that are named, ≥ 1; default: all
 * @example listWords(['S4', 'S5', 'S6']) // => 'S4, S5 and S6'
 * @example listWords(['S4', 'S5', 'S6', 'S7'], 2) // => 'S4, S5 and 2 more'
 */
export function listWords(items: readonly string[], most = Number.POSITIVE_INFINITY): string {
  if (items.length > most) return `${items.slice(0, most).join(', ')} and ${items.length - most} more`
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)!}`
}
