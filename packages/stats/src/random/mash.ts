/**
 * The hash of text that starts a generator. One number goes on from letter to letter and from text to text, so that a text may be handed over in parts.
 *
 * @see Baagøe, Mash (2010), as carried by seedrandom 3.0.5
 */

/** Moves the number in `hash[place]` on by the letters `from` … `to − 1`, given as their codes. */
export function mashInto(hash: Float64Array, place: number, letters: Uint16Array, from: number, to: number): void {
  let sum = hash[place]!
  for (let at = from; at < to; at++) {
    sum += letters[at]!
    const whole = 0.02519603282416938 * sum
    const low = Math.floor(whole)
    const product = (whole - low) * low
    const high = Math.floor(product)
    sum = high + (product - high) * 0x100000000
  }
  hash[place] = sum
}

/** What the number is worth as a share, in 32 bits. */
export const shareAt = (hash: Float64Array, place: number): number => (hash[place]! >>> 0) * 2.3283064365386963e-10

/** Writes the codes of the text from `letters[0]` on. */
export function lettersInto(letters: Uint16Array, text: string): void {
  for (let at = 0; at < text.length; at++) letters[at] = text.charCodeAt(at)
}

/** The number before the first letter. */
const START = 0xefc8249d

/** What the number is worth after each of the three spaces that are hashed before any text, and the number after them. */
export const { spaceShares, afterSpaces } = hashSpaces()

function hashSpaces(): { readonly spaceShares: readonly number[]; readonly afterSpaces: number } {
  const hash = Float64Array.of(START)
  const space = new Uint16Array(1)
  lettersInto(space, ' ')
  const shares = [1, 2, 3].map(() => {
    mashInto(hash, 0, space, 0, 1)
    return shareAt(hash, 0)
  })
  return { spaceShares: shares, afterSpaces: hash[0]! }
}
