import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import { holdTimer, resumeTimer, startTimer } from './timer.ts'

function freshLine() {
  const line = buildLine(smallLoop({ zones: 4, start: [0] }))
  resetLine(line, 'a', 0)
  return line
}

test('a held timer keeps the time that it had left', () => {
  const line = freshLine()
  line.queue.times[3] = 10
  startTimer(line, 3)
  line.now = 4
  holdTimer(line, 3)
  expect([line.queue.isPending(3), line.slots.isHeldBack[3], line.slots.left[3]]).toEqual([false, 1, 6])
  // held twice is held
  line.now = 5
  holdTimer(line, 3)
  expect(line.slots.left[3]).toBe(6)
  line.now = 20
  resumeTimer(line, 3)
  expect([line.queue.isPending(3), line.slots.isHeldBack[3], line.queue.times[3]]).toEqual([true, 0, 26])
  resumeTimer(line, 3)
  expect(line.queue.size).toBe(1)
})

test('what ends at this very instant is not held', () => {
  const line = freshLine()
  line.queue.times[3] = 4
  startTimer(line, 3)
  line.now = 4
  holdTimer(line, 3)
  expect([line.queue.isPending(3), line.slots.isHeldBack[3]]).toEqual([true, 0])
})

test('a timer that is not set is neither held nor let go', () => {
  const line = freshLine()
  holdTimer(line, 2)
  resumeTimer(line, 2)
  expect([line.queue.size, line.slots.isHeldBack[2]]).toEqual([0, 0])
})
