import { describe, expect, test } from 'vitest'
import { type Chunk, Schedule } from './schedule.ts'

const all = (schedule: Schedule, learn: (chunk: Chunk) => void = () => {}): Chunk[] => {
  const chunks: Chunk[] = []
  for (let chunk = schedule.next(); chunk !== null; chunk = schedule.next()) {
    chunks.push(chunk)
    learn(chunk)
  }
  return chunks
}

describe('the schedule', () => {
  test('gives each replication of each count once', () => {
    const schedule = new Schedule(3, 20)
    const given = all(schedule, ({ index }) => schedule.learn(index, 9000 * (index + 1)))
    for (const index of [0, 1, 2]) {
      const mine = given
        .filter((chunk) => chunk.index === index)
        .flatMap(({ from, to }) => Array.from({ length: to - from }, (_, k) => from + k))
      expect(mine).toEqual(Array.from({ length: 20 }, (_, k) => k))
    }
  })

  test('lets all counts go forward together', () => {
    const schedule = new Schedule(4, 200)
    const next = [0, 0, 0, 0]
    for (const { index, from, to } of all(schedule, ({ index }) => schedule.learn(index, 6000))) {
      expect(from).toBe(Math.min(...next))
      next[index] = to
    }
  })

  test('cuts by work: one replication until it is known, many of a short line, one of a long', () => {
    const schedule = new Schedule(2, 1000)
    expect([schedule.next(), schedule.next()]).toEqual([
      { index: 0, from: 0, to: 1 },
      { index: 1, from: 0, to: 1 },
    ])
    schedule.learn(0, 7500)
    schedule.learn(1, 5_000_000)
    expect([schedule.next(), schedule.next()]).toEqual([
      { index: 0, from: 1, to: 21 },
      { index: 1, from: 1, to: 2 },
    ])
  })
  test('a part with a pace goes ahead of the others by that much', () => {
    const schedule = new Schedule(2, [
      { from: 0, to: 20 },
      { from: 0, to: 9, pace: 3 },
    ])
    const order = all(schedule).map(({ index }) => index)
    expect(order.slice(0, 12)).toEqual([0, 1, 1, 1, 0, 1, 1, 1, 0, 1, 1, 1])
    expect(order).toHaveLength(29)
  })

  test('a thread takes lines that it has built before others that are as far on, and leaves none waiting', () => {
    const kin = [
      { from: 0, to: 2, kin: 5 },
      { from: 0, to: 2, kin: 6 },
      { from: 0, to: 2, kin: 5 },
      { from: 0, to: 2, kin: 6 },
    ]
    const schedule = new Schedule(4, kin)
    expect([0, 1, 0, 1].map((thread) => schedule.next(thread)!.index)).toEqual([0, 1, 2, 3])
    expect([1, 1, 1, 1].map((thread) => schedule.next(thread)!.index)).toEqual([1, 3, 0, 2])
    expect(schedule.next(0)).toBeNull()
  })

  test('a part begins with its opening, whatever the part, and a thread opens all parts of a kin before another', () => {
    const openings = [
      { from: 0, to: 200, kin: 5, opening: 3 },
      { from: 0, to: 200, kin: 6, opening: 3 },
      { from: 0, to: 30, kin: 5, opening: 7, pace: 3 },
      { from: 0, to: 5, kin: 6, opening: 7, pace: 3 },
    ]
    const schedule = new Schedule(4, openings)
    expect([0, 0, 1, 1].map((thread) => schedule.next(thread))).toEqual([
      { index: 0, from: 0, to: 3 },
      { index: 2, from: 0, to: 7 },
      { index: 1, from: 0, to: 3 },
      { index: 3, from: 0, to: 5 },
    ])
    schedule.learn(0, 50_000)
    schedule.learn(2, 50_000)
    // unknown yet: one by one again
    expect([0, 1].map((thread) => schedule.next(thread))).toEqual([
      { index: 2, from: 7, to: 10 },
      { index: 1, from: 3, to: 4 },
    ])
  })
})
