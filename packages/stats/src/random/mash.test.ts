import fc from 'fast-check'
import seedrandom from 'seedrandom'
import { expect, test } from 'vitest'
import { afterSpaces, lettersInto, mashInto, shareAt, spaceShares } from './mash.ts'

const lettersOf = (text: string): Uint16Array => {
  const letters = new Uint16Array(text.length)
  lettersInto(letters, text)
  return letters
}

/** The first lag that the library starts with is what the spaces are worth less what the text is worth, and 1 where that is below 0. */
const libraryShare = (text: string): number => seedrandom.alea(text, { state: true }).state().s0

test('a text is worth what the library makes of it, whatever its letters', () => {
  fc.assert(
    // any characters, halves of pairs too; the tool's own list of them takes a second to make
    fc.property(fc.string({ minLength: 1, maxLength: 40, unit: fc.nat(0x10_ff_ff).map((code) => String.fromCodePoint(code)) }), (text) => {
      const hash = Float64Array.of(9, afterSpaces)
      mashInto(hash, 1, lettersOf(text), 0, text.length)
      const share = spaceShares[0]! - shareAt(hash, 1)
      expect(share < 0 ? share + 1 : share).toBe(libraryShare(text))
      expect(hash[0]).toBe(9)
    }),
    { seed: 1, numRuns: 1_000 },
  )
})

test('in parts it is the same', () => {
  const whole = Float64Array.of(afterSpaces)
  const parts = Float64Array.of(afterSpaces)
  const letters = lettersOf('42/7/Zeit/für Öl')
  mashInto(whole, 0, letters, 0, letters.length)
  mashInto(parts, 0, letters, 0, 5)
  mashInto(parts, 0, letters, 5, letters.length)
  expect(parts).toEqual(whole)
})
