import { expect, test } from 'vitest'
import { workingSeconds } from './workingSeconds.ts'

const window = { warmupSeconds: 100, endSeconds: 1100 }
const pause = (startSeconds: number, lengthSeconds: number) => ({ startSeconds, lengthSeconds })

test('the window, where there are no breaks', () => expect(workingSeconds({ window, breaks: [] })).toBe(1000))
test('breaks inside count whole, those at its ends in part, those outside not', () =>
  expect(workingSeconds({ window, breaks: [pause(0, 50), pause(90, 20), pause(500, 30), pause(1090, 60), pause(1200, 5)] })).toBe(
    1000 - 10 - 30 - 10,
  ))
test('breaks that overlap count once', () =>
  expect(workingSeconds({ window, breaks: [pause(200, 100), pause(250, 20), pause(290, 20)] })).toBe(890))
