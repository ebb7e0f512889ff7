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
    schedule.learn(0, 3000)
    schedule.learn(1, 5_000_000)
    expect([schedule.next(), schedule.next()]).toEqual([
      { index: 0, from: 1, to: 21 },
      { index: 1, from: 1, to: 2 },
    ])
  })
})
