/** A text spoilt at random: what a slip, a broken copy or ill will makes of it. */

/** whole numbers, 0 … below - 1 */
export type Whole = (below: number) => number

/** The same numbers for the same seed, everywhere (mulberry32; from memory: any generator does here). */
export function wholeOf(seed: number): Whole {
  let state = seed >>> 0
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below)
  }
}

export const one = <T>(of: readonly T[], whole: Whole): T => of[whole(of.length)]!

/** Numbers at the edge of what can be said. */
const NUMBERS = [
  '0',
  '-1',
  '1e-308',
  '1e308',
  '1e999',
  '-0',
  '4294967296',
  '9007199254740993',
  '0.1',
  '1,5',
  'NaN',
  '٣',
  '1_000',
  '0x1F',
  '007',
]

/** What is special to some reader: of YAML, JSON, tables, terminals, pages, prototypes, paths. */
const SPECIAL = [
  '',
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  '../../etc/passwd',
  '/dev/zero',
  'file:///etc/passwd',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '{{7*7}}',
  '=cmd|x!A0',
  '@SUM(1)',
  '&a [*a, *a]',
  '*a',
  '<<: *a',
  '!!js/function x',
  '%',
  '\u001b[2J',
  '\u0000',
  '\u202e',
  '\ufeff',
  '\ud800',
  '﷽',
  '\r',
  '\n',
  '\n\n',
  '\t',
  '"',
  "'",
  '`',
  '|',
  '>',
  '#',
  ': ',
  '- ',
  '[',
  ']',
  '{',
  '}',
  ',',
  ';',
  '--',
  '\\',
]

/** how often a piece is repeated where it is */
const OFTEN = [2, 30, 1000, 20_000]
/** characters; a longer text only takes longer */
const LONGEST = 200_000

/** The text with one to four pieces changed. */
export function mutated(text: string, others: readonly string[], whole: Whole): string {
  let told = text
  for (let left = 1 + whole(4); left > 0; left--) told = once(told, others, whole).slice(0, LONGEST)
  return told
}

function once(text: string, others: readonly string[], whole: Whole): string {
  const from = whole(text.length + 1)
  const to = Math.min(text.length, from + 1 + whole(whole(4) === 0 ? text.length + 1 : 12))
  const [before, piece, after] = [text.slice(0, from), text.slice(from, to), text.slice(to)]
  switch (whole(9)) {
    case 0:
      return before + after
    case 1:
      return before + piece + piece + after
    case 2:
      return before + piece.repeat(Math.min(one(OFTEN, whole), 1 + Math.floor(LONGEST / (piece.length + 1)))) + after
    case 3:
      return before + one(SPECIAL, whole) + after
    case 4:
      return before + one(SPECIAL, whole).repeat(one(OFTEN, whole)) + after
    case 5:
      return replacedNumber(text, whole)
    case 6:
      return before + String.fromCharCode(whole(whole(2) === 0 ? 128 : 0x1_0000)) + text.slice(from + 1)
    case 7: {
      const other = one(others, whole)
      const at = whole(other.length + 1)
      return before + other.slice(at, at + whole(80)) + after
    }
    default:
      return whole(2) === 0 ? before : movedLine(text, whole)
  }
}

/** One of its numbers, at random, is another. */
function replacedNumber(text: string, whole: Whole): string {
  const found = [...text.matchAll(/\d+(?:\.\d+)?/g)]
  if (found.length === 0) return text + one(NUMBERS, whole)
  const { index, 0: number } = one(found, whole)
  return text.slice(0, index) + one(NUMBERS, whole) + text.slice(index + number.length)
}

function movedLine(text: string, whole: Whole): string {
  const lines = text.split('\n')
  const [line] = lines.splice(whole(lines.length), 1)
  lines.splice(whole(lines.length + 1), 0, line!)
  return lines.join('\n')
}
