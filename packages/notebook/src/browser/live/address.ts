/** What is set, in the page's address behind `#`: a link or a bookmark brings it back. */
import { addressValues } from '../../live/addressValues.ts'
import type { LiveValues } from '../../live/liveChanges.ts'

/** The values under a prefix, such as `if.`. */
export const valuesIn = (prefix: string): LiveValues => addressValues(location.hash, prefix)

/** Puts them in place of those that are there; null: none. */
export function keepValues(prefix: string, values: LiveValues | null): void {
  const kept = new URLSearchParams(location.hash.includes('=') ? location.hash.slice(1) : '')
  for (const key of [...kept.keys()]) if (key.startsWith(prefix)) kept.delete(key)
  for (const [key, value] of Object.entries(values ?? {})) kept.set(`${prefix}${key}`, value)
  const hash = kept.toString()
  history.replaceState(null, '', hash === '' ? location.href.replace(/#.*$/, '') : `#${hash}`)
}
