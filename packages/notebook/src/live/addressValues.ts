/** What an address says behind its `#` of the values that are set: a link that anybody may have written. */
import type { LiveValues } from './liveChanges.ts'

/**
 * The values under a prefix; of other keys nothing is said.
 *
 * @param hash    as the browser gives it, with its `#`
 * @param prefix  such as `if.`
 * @example addressValues('#if.carriers=12&a.carriers=9', 'if.') // => { carriers: '12' }
 */
export function addressValues(hash: string, prefix: string): LiveValues {
  const found = [...new URLSearchParams(hash.slice(1))].flatMap(([key, value]): [string, string][] =>
    key.startsWith(prefix) ? [[key.slice(prefix.length), value]] : [],
  )
  return Object.fromEntries(found)
}
