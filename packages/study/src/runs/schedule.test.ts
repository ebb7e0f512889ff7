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
})
