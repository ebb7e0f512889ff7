/** Products and their variants: MODEL.md §8. */
import { stream } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { smallLoop, tell, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import type { MixSpec } from '../spec.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const LETTERS = 'ABCD'

/** The variants of the first products, read off the loads, which take 1, 2, 3, 4 s by variant. */
function variants(mix: MixSpec, count: number, products: number, seed = '42'): string {
  const spec = smallLoop({
    zones: 2,
    start: [1],
    move: 1,
    clear: 1,
    variants: count,
    mix,
    stations: [{ at: 0, unload: true, load: { fit: [1, 2, 3, 4].slice(0, count) } }],
    until: 6 * products + 10,
  })
  const { lines } = tell(spec, seed)
  const at = (line: string) => Number(line.split(' ')[0])
  const begins = lines.filter((line) => line.includes('load begins') && !line.includes('unload')).map(at)
  const ends = lines.filter((line) => line.includes('load ends') && !line.includes('unload')).map(at)
  return ends
    .slice(0, products)
    .map((end, k) => LETTERS[end - begins[k]! - 1])
    .join('')
}

describe('mix', () => {
  test('levelled: the largest w·(k + 1) − W·(number so far), ties: first in the list', () => {
    // MODEL.md T15: weights 3, 2, 1
    expect(variants({ kind: 'levelled', shares: [3, 2, 1] }, 3, 12)).toBe('ABACBAABACBA')
    // weights 2, 1, 1, W = 4: k 0: 2 1 1 → A; k 1: 0 2 2 → B; k 2: 2 −1 3 → C; k 3: 4 0 0 → A; and so on
    expect(variants({ kind: 'levelled', shares: [2, 1, 1] }, 3, 8)).toBe('ABCAABCA')
    // a share of 0 is never taken
    expect(variants({ kind: 'levelled', shares: [0, 1, 1] }, 3, 6)).toBe('BCBCBC')
  })

  test('pattern: a sequence repeated', () => {
    expect(variants({ kind: 'pattern', sequence: [1, 1, 0] }, 2, 8)).toBe('BBABBABB')
  })

  test('list: a sequence once', () => {
    expect(variants({ kind: 'list', sequence: [2, 0, 1] }, 3, 8)).toBe('CAB')
  })

  test('random: draw k of the stream `mix`, first variant whose cumulated share exceeds it', () => {
    // MODEL.md §9 (computed with seedrandom 3.0.5): 0.7355…, 0.8698…, 0.0999… : shares 0.4, 0.3, 0.2, 0.1 give variants 2, 2, 0
    expect(variants({ kind: 'random', shares: [0.4, 0.3, 0.2, 0.1] }, 4, 3)).toBe('CCA')
    const draws = stream('7', 0, 'mix')
    const expected = Array.from({ length: 40 }, () => {
      const u = draws()
      return LETTERS[[0.25, 0.5, 1].findIndex((sum) => u < sum)]
    })
    expect(variants({ kind: 'random', shares: [0.25, 0.25, 0.5] }, 3, 40, '7')).toBe(expected.join(''))
  })

  test('weights need not sum to 1', () => {
    expect(variants({ kind: 'random', shares: [4, 3, 2, 1] }, 4, 30)).toBe(
      variants({ kind: 'random', shares: [0.4, 0.3, 0.2, 0.1] }, 4, 30),
    )
  })
})

describe('a list that has run out', () => {
  const LIST: Wish = {
    zones: 4,
    start: [0, 3],
    move: 4,
    clear: 3,
    mix: { kind: 'list', sequence: [0] },
    stations: [{ at: 1, unload: true, load: 5 }],
    until: 40,
  }

  test('stops the line when nothing else can happen: out of products', () => {
    // c0 loads p0 in Z1 from 4 to 9 and leaves; Z1 clear at 12. c1 leaves Z3 at 3, is in Z0 at 7, leaves at 12, is in Z1 at 16: there is no p1.
    // c0: Z2 13, Z3 17, Z0 21; Z1 is occupied. Nothing more can happen at 21.
    const { result, lines } = tell(smallLoop(LIST))
    expect(lines.slice(-3)).toEqual(['20 clear Z3', '21 rest Z0 c0', '21 standstill'])
    expect(result.end).toEqual({ reason: 'out of products', atSeconds: 21, waits: [[0, 1]], cycle: [], unmanned: [] })
    expect([result.loads, result.output]).toEqual([1, 0])
    // the states of that instant count for the rest: exchanging 0–4 and 9–16, working 4–9, waiting for product 16–40
    expect(spent(result.stations[0]!.seconds)).toEqual({ working: 5, 'waiting for product': 24, exchanging: 11 })
    // Z1: claimed 0–4 and 12–16, working, vacating 9–12, other 16–40; Z0: vacating 0–3, claimed 3–7, blocked 7–12, vacating 12–15, free 15–17, claimed 17–21, blocked 21–40
    expect(spent(result.zones[1]!.seconds)).toEqual({ claimed: 8, working: 5, other: 24, vacating: 3 })
    expect(spent(result.zones[0]!.seconds)).toEqual({ free: 2, claimed: 8, blocked: 24, vacating: 6 })
    // c1 waits empty: 0–3, 7–12, 16–40; c0 with its product: 21–40
    expect(result.carriers.map(({ seconds }) => spent(seconds))).toEqual([
      { moving: 16, 'worked on': 5, 'waiting with product': 19 },
      { moving: 8, 'waiting empty': 32 },
    ])
    expect(result.productsInLineMean).toBe(36 / 40)
  })

  test('a standstill while a stop holds the line is one all the same', () => {
    // Z1 is stopped from 18 to 30, which holds c0's way in; but c0 could not start at 21 in any case
    const stop = { name: 'jam', on: { kind: 'zone', index: 1 }, clock: 'calendar', after: 18, repair: 12 } as const
    const { result } = tell(smallLoop({ ...LIST, stops: [stop] }))
    expect(result.end.reason).toBe('out of products')
    expect(result.end.atSeconds).toBe(21)
  })

  test('products that are still on their way are unloaded first', () => {
    // one carrier, two products: MODEL.md T17
    const { result } = tell(
      smallLoop({
        zones: 3,
        start: [0],
        move: 4,
        clear: 3,
        mix: { kind: 'list', sequence: [0, 0] },
        stations: [{ at: 0, unload: true, load: 10 }],
        until: 100,
      }),
    )
    expect(result.end).toEqual({ reason: 'out of products', atSeconds: 56, waits: [], cycle: [], unmanned: [] })
    expect([result.loads, result.output, result.timeInLine.mean, result.lap.mean]).toEqual([2, 2, 22, 22])
    expect(result.stations[0]!.seconds['waiting for product']).toBe(44)
  })
})
