/**
 * Items as a sentence lists them.
 *
 * @example listWords(['S4', 'S5', 'S6']) // => 'S4, S5 and S6'
 */
export function listWords(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)!}`
}
