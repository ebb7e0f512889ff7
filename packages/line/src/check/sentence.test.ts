import { expect, test } from 'vitest'
import { sentenceWords } from './sentence.ts'

const { all, choices, meant, plural, quote, range, zoneList } = sentenceWords

test('lists of names', () => {
  expect([choices(['a']), choices(['a', 'b', 'c']), all(['a', 'b', 'c'])]).toEqual(['"a"', '"a", "b" or "c"', '"a", "b" and "c"'])
  expect(choices(['a', 'b', 'c'], 2)).toBe('"a", "b" … (3 in all)')
  expect([zoneList(['Z1']), zoneList(['Z1', 'Z2'])]).toEqual(['zone "Z1"', 'zones "Z1" and "Z2"'])
  expect(zoneList(['Z1', 'Z2', 'Z3', 'Z4', 'Z5'])).toBe('zones "Z1", "Z2", "Z3" and 2 more')
  expect(range(['a', 'b', 'c', 'd', 'e', 'f', 'g'])).toBe('"a" … "g"')
})

test('counts, long texts, and what was meant', () => {
  expect([plural(1, 'zone'), plural(2, 'zone')]).toEqual(['1 zone', '2 zones'])
  expect(quote('x'.repeat(70))).toBe(`"${'x'.repeat(57)}…"`)
  expect([meant('Z07', 'no'), meant(null, 'no')]).toEqual(['did you mean "Z07"?', 'no'])
})
