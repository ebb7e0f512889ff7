import { describe, expect, test } from 'vitest'
import { Tally } from './tally.ts'

describe('Tally', () => {
  test('tells nothing that it cannot know', () => {
    const tally = new Tally()
    expect([tally.mean, tally.variance, tally.sd, tally.min, tally.max]).toEqual([undefined, undefined, undefined, undefined, undefined])
    tally.add(7)
    expect([tally.mean, tally.variance, tally.sd, tally.min, tally.max]).toEqual([7, undefined, undefined, 7, 7])
  })
  test('equal values have exactly no spread', () => {
    expect(Tally.of([0.1, 0.1, 0.1, 0.1]).sd).toBe(0)
  })
  test('merging nothing, and into nothing', () => {
    const tally = Tally.of([1, 2, 4])
    tally.merge(new Tally())
    expect([tally.count, tally.mean]).toEqual([3, 7 / 3])
    const empty = new Tally()
    empty.merge(tally)
    expect([empty.count, empty.mean, empty.variance, empty.max]).toEqual([3, 7 / 3, tally.variance, 4])
  })
})
