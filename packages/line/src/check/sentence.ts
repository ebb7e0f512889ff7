import { listWords } from '../words/listWords.ts'

/** A sentence about a line, written in a file or in code: what was found, and what would be right. */
export interface Sentence {
  /** `E_…`: the line cannot be built; `W_…`: it is doubtful */
  readonly code: string
  readonly severity: 'error' | 'warning'
  /** what was found */
  readonly message: string
  /** what would be right */
  readonly fix: string
}

export const error = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'error', message, fix })
export const warning = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'warning', message, fix })

/** `"a", "b" or "c"`, shortened where there are many. */
function choices(words: readonly string[], most = 12): string {
  const shown = words.slice(0, most).map((word) => `"${word}"`)
  if (words.length > most) return `${shown.join(', ')} … (${words.length} in all)`
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} or ${shown.at(-1)}`
}

/** `"a", "b" and "c"`, shortened where there are many. */
const all = (words: readonly string[]): string => choices(words).replace(/" or (?="[^"]*"$)/, '" and ')

const shorten = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text)
const quote = (text: string): string => `"${shorten(text)}"`
const meant = (near: string | null, otherwise: string): string => (near === null ? otherwise : `did you mean "${near}"?`)
const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`

const ZONES_SHOWN = 3

/** `zone "Z01"`, `zones "Z01" and "Z02"`, `zones "Z01", "Z02", "Z03" and 7 more`. */
function zoneList(names: readonly string[]): string {
  if (names.length <= ZONES_SHOWN + 1) return `zone${names.length === 1 ? '' : 's'} ${all(names)}`
  return `zones ${listWords(names.map(quote), ZONES_SHOWN)}`
}

/** `"Z01" … "Z22"` */
const range = (names: readonly string[]): string => (names.length > 6 ? `"${names[0]}" … "${names.at(-1)}"` : all(names))

/** What sentences are put together of. */
export const sentenceWords = { choices, all, shorten, quote, meant, plural, zoneList, range }
