import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { callingThread } from '../runs/callingThread.ts'
import { isThreadEnd, threadSlots } from './threadSlots.ts'

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

test('the end of a thread says nothing about the run', () => {
  expect(isThreadEnd(Object.assign(new Error('much'), { name: 'OutOfMemory' }))).toBe(true)
  expect(isThreadEnd(new Error('a worker thread ended early, with code 1'))).toBe(true)
  expect([isThreadEnd(new RangeError('x')), isThreadEnd(new Error('ended')), isThreadEnd(null)]).toEqual([false, false, false])
})
