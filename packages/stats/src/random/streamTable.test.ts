import seedrandom from 'seedrandom'
import { describe, expect, test } from 'vitest'
import { StatisticsError } from '../statisticsError.ts'
import { stepAlea } from './alea.ts'
import { stream } from './stream.ts'
import { StreamTable } from './streamTable.ts'

const NAMES = ['mix', 'task/fit lid', 'move/17', 'down/lift 3', 'Zeit/für Öl']

describe('StreamTable', () => {
  test('draws the same bits as the library that starts it, 20,000 draws of each of five streams', () => {
    const table = new StreamTable('42', 7, NAMES)
    const library = NAMES.map((name) => seedrandom.alea(`42/7/${name}`))
    let different = 0
    for (let i = 0; i < 100_000; i++) {
      const at = i % NAMES.length
      table.next(at)
      if (table.u[0] !== library[at]!.double()) different++
    }
    expect(different).toBe(0)
  })

  test('a stream more, or another order, changes no draw of the others', () => {
    const few = new StreamTable('7', 0, ['a', 'b'])
    const many = new StreamTable('7', 0, ['new', 'b', 'a', 'other'])
    for (let i = 0; i < 100; i++) {
      few.next(1)
      many.next(0)
      many.next(1)
      expect(many.u[0]).toBe(few.u[0])
    }
  })

  test('reset begins the asked replication anew, in the same arrays', () => {
    const table = new StreamTable('7', 0, NAMES)
    const { u } = table
    table.next(2)
    const first = u[0]
    table.reset('7', 1)
    table.next(2)
    expect(u[0]).toBe(stream('7', 1, NAMES[2]!)())
    table.reset('7', 0)
    table.next(2)
    expect(u[0]).toBe(first)
    expect(table.u).toBe(u)
  })

  test('a stream that is first drawn from when others have been drawn from, singly or in a block, begins at its beginning', () => {
    const table = new StreamTable('7', 3, NAMES)
    const list = new Float64Array(2)
    for (let k = 0; k < 50; k++) table.next(0)
    table.nextInto(1, list, 0)
    table.nextBlockInto(2, list, 1, 1)
    expect([...list]).toEqual([stream('7', 3, NAMES[1]!)(), stream('7', 3, NAMES[2]!)()])
    table.reset('7', 4)
    table.nextBlockInto(0, list, 0, 2)
    const again = stream('7', 4, NAMES[0]!)
    expect([...list]).toEqual([again(), again()])
  })

  test('nextInto writes where it is told', () => {
    const list = new Float64Array(3)
    const table = new StreamTable('7', 0, NAMES)
    const one = stream('7', 0, 'mix')
    for (let i = 0; i < 3; i++) table.nextInto(0, list, i)
    expect([...list]).toEqual([one(), one(), one()])
    expect(table.u[0]).toBe(0)
  })

  test('a block holds what single draws would', () => {
    const list = new Float64Array(20)
    const table = new StreamTable('7', 0, NAMES)
    const one = stream('7', 0, 'move/17')
    table.nextBlockInto(2, list, 4, 16)
    expect([...list.subarray(4)]).toEqual(Array.from({ length: 16 }, () => one()))
    table.next(2)
    expect(table.u[0]).toBe(one())
  })

  test('refuses seeds and names that could give two streams one name', () => {
    const codeOf = (make: () => unknown): string => {
      try {
        make()
      } catch (error) {
        if (error instanceof StatisticsError) return error.code
      }
      return 'no refusal'
    }
    expect(codeOf(() => new StreamTable('', 0, NAMES))).toBe('E_SEED')
    expect(codeOf(() => new StreamTable('4/2', 0, NAMES))).toBe('E_SEED')
    expect(codeOf(() => new StreamTable('42', -1, NAMES))).toBe('E_SEED')
    expect(codeOf(() => new StreamTable('42', 0.5, NAMES))).toBe('E_SEED')
    expect(codeOf(() => new StreamTable('42', 0, ['a', 'b', 'a']))).toBe('E_STREAM_NAME')
    expect(codeOf(() => stream('', 0, 'a'))).toBe('E_SEED')
    expect(codeOf(() => stream('42-pilot', 0, 'a/b/c'))).toBe('no refusal')
  })

  test('a uniform of 0 counts as 2^-54', () => {
    const out = new Float64Array(1)
    stepAlea(new Float64Array(4), 0, out, 0)
    expect(out[0]).toBe(2 ** -54)
  })
})

describe('ten thousand neighbouring names are independent', () => {
  // Chi-square of 256 equal cells, 255 degrees of freedom: 161.65 and 377.08 cut 1e-6 off each end; eight statements, false alarms 1.6e-5 in all.
  const low = 161.65
  const high = 377.08
  const drawsOf = (nameOf: (i: number) => [number, string], draw: number): number[] =>
    Array.from({ length: 10_000 }, (_, i) => {
      const next = stream('1', ...nameOf(i))
      for (let k = 1; k < draw; k++) next()
      return next()
    })
  const byName = (i: number): [number, string] => [0, `task/OP${i}`]
  const byReplication = (i: number): [number, string] => [i, 'mix']

  test.each([1, 2, 8, 100])('draw %i', (draw) => {
    for (const nameOf of [byName, byReplication]) {
      const u = drawsOf(nameOf, draw)
      expect(chiSquare(u)).toBeGreaterThan(low)
      expect(chiSquare(u)).toBeLessThan(high)
      // 4 standard errors: 6.3e-5 a statement
      expect(Math.abs(neighbourCorrelation(u))).toBeLessThan(4 / Math.sqrt(u.length))
    }
  })

  test('both checks see a bad generator', () => {
    const poor = Array.from({ length: 10_000 }, (_, i) => (i * 0.001) % 1)
    expect(chiSquare(poor)).toBeLessThan(low)
    expect(neighbourCorrelation(poor)).toBeGreaterThan(4 / 100)
  })
})

function chiSquare(u: readonly number[]): number {
  const counts = new Float64Array(256)
  for (const one of u) counts[Math.floor(one * 256)]!++
  const expected = u.length / 256
  return counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0)
}

function neighbourCorrelation(u: readonly number[]): number {
  let cross = 0
  let square = 0
  for (let i = 0; i < u.length; i++) {
    square += (u[i]! - 0.5) ** 2
    if (i > 0) cross += (u[i]! - 0.5) * (u[i - 1]! - 0.5)
  }
  return cross / square
}
