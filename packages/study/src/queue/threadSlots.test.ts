import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { callingThread } from '../runs/callingThread.ts'
import { ThreadEnd } from '../runs/threadEnd.ts'
import { threadSlots } from './threadSlots.ts'

const spec = stationLoop()
const task = { carriers: 3, seed: '2', want: 'rows' } as const

test('jobs on threads of their own give the bits of any other; what a run throws is thrown', { tags: 'long' }, async () => {
  const slots = threadSlots(1)
  try {
    expect(slots.depth).toBe(2)
    const here = callingThread()
    const expected = await here.run(0, { ...task, line: here.line(spec), from: 0, to: 6 })
    const [first, second] = await Promise.all([slots.run(spec, { ...task, from: 0, to: 3 }), slots.run(spec, { ...task, from: 3, to: 6 })])
    expect([...first.rows, ...second.rows]).toEqual(expected.rows)
    await expect(slots.run(spec, { ...task, carriers: 99, from: 0, to: 1 })).rejects.toThrow(RangeError)
  } finally {
    await slots.close()
  }
})

test('a thread that knows many lines ends, and its jobs with it are done before', { tags: 'long' }, async () => {
  const ports = (): number => process.getActiveResourcesInfo().filter((name) => name === 'MessagePort').length
  const before = ports()
  const slots = threadSlots(1, 2)
  const one = ports() - before
  try {
    const here = callingThread()
    const lines = Array.from({ length: 6 }, (_, index) => stationLoop({ window: { warmupSeconds: 0, endSeconds: 600 * (index + 2) } }))
    const expected = await Promise.all(lines.map((line) => here.run(0, { ...task, line: here.line(line), from: 0, to: 2 })))
    // two at once, as a worker has them
    for (let at = 0; at < lines.length; at += 2) {
      const ran = await Promise.all(lines.slice(at, at + 2).map((line) => slots.run(line, { ...task, from: 0, to: 2 })))
      expect(ran.map(({ rows }) => rows)).toEqual(expected.slice(at, at + 2).map(({ rows }) => rows))
    }
    expect(one).toBeGreaterThan(0)
    expect(ports() - before).toBe(one)
  } finally {
    await slots.close()
  }
})

test('a thread that ended is told as its end, and the next job has another', { tags: 'long' }, async () => {
  const slots = threadSlots(1)
  const long = stationLoop({ window: { warmupSeconds: 0, endSeconds: 1e9 } })
  try {
    const underWay = slots.run(long, { ...task, from: 0, to: 1 })
    await slots.close()
    await expect(underWay).rejects.toBeInstanceOf(ThreadEnd)
    const { rows } = await slots.run(spec, { ...task, from: 0, to: 1 })
    expect(rows).toHaveLength(1)
    await expect(slots.run(spec, { ...task, carriers: 99, from: 0, to: 1 })).rejects.not.toBeInstanceOf(ThreadEnd)
  } finally {
    await slots.close()
  }
})
