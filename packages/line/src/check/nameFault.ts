/** What a name, and a title, may be. Names feed the random streams, are keys of files, and stand in tables. */

const NAME_MAX = 200
/** what JavaScript keeps for itself as a key of records */
const RESERVED_NAME = '__proto__'

/**
 * Why a text is no name of a part; null: it is one.
 *
 * @example nameFault('Z/01') // => 'it has a "/", which separates the names of random streams'
 */
export function nameFault(name: string): string | null {
  if (name === RESERVED_NAME) return 'programs keep this word for themselves'
  return name.includes('/') ? 'it has a "/", which separates the names of random streams' : titleFault(name)
}

/**
 * Why a text cannot be shown as a title; null: it can.
 *
 * @example titleFault(' Fit lid') // => 'it begins or ends with a blank'
 */
export function titleFault(name: string): string | null {
  if (name === '') return 'it is empty'
  if (name.length > NAME_MAX) return `it has ${name.length} characters`
  if (name !== name.trim()) return 'it begins or ends with a blank'
  if (/\p{Cc}|\p{Cs}|\p{Zl}|\p{Zp}/u.test(name)) return 'it has a line break or a control character'
  return null
}
