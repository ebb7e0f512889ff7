import { describe, expect, test } from 'vitest'
import { memoryShell } from './memoryShell.ts'
import { progress, progressLine } from './progress.ts'

describe('into a file', () => {
  test('one line at the start, one at the end', () => {
    const shell = memoryShell()
    const told = progress(shell, 'carriers 5 to 6, 10 replications each', 20)
    told.onProgress({ done: 5, total: 20 })
    shell.clock = 4200
    told.onProgress({ done: 20, total: 20 })
    told.end(false)
    expect(shell.said.err).toBe('carriers 5 to 6, 10 replications each\ndone: 20 replications in 4.2 s\n')
  })

  test('a stop says how far it came', () => {
    const shell = memoryShell()
    const told = progress(shell, 'what', 2600)
    told.end(true)
    expect(shell.said.err).toBe('what\nstopped: 0 of 2\u202f600 replications in 0 s\n')
  })
})

test('on a terminal the line is renewed, not too often, and taken away at the end', () => {
  const shell = memoryShell({}, true)
  const told = progress(shell, 'what', 20)
  for (const [clock, done] of [
    [0, 1],
    [50, 2],
    [1000, 10],
  ] as const) {
    shell.clock = clock
    told.onProgress({ done, total: 20, precision: 0.02 })
  }
  told.end(false)
  const lines = shell.said.err.split('\r\u001b[2K')
  expect(lines).toEqual(['what: 0/20', 'what: 1/20, ± 2.0 %, 0 s left', 'what: 10/20, ± 2.0 %, 1 s left', 'done: 10 replications in 1 s\n'])
})

test('a sentence that stays takes the place of the line', () => {
  const [there, elsewhere] = [memoryShell({}, true), memoryShell()]
  for (const shell of [there, elsewhere]) progress(shell, 'what', 20).say('so far, most with 12')
  expect(there.said.err).toBe('what: 0/20\r\u001b[2Kso far, most with 12\n')
  expect(elsewhere.said.err).toBe('what\nso far, most with 12\n')
})

test('a line says what is known so far', () => {
  expect(progressLine('what', { done: 10, total: 20, leading: 12, precision: 0.01 }, 1)).toBe(
    'what: 10/20, most with 12, ± 1.0 %, 1 s left',
  )
  expect(progressLine('what', { done: 0, total: 20 }, 0)).toBe('what: 0/20')
  expect(progressLine('what', { done: 10, total: 20, precision: null }, 90)).toBe('what: 10/20, 90 s left')
  expect(progressLine('what', { done: 20, total: 20, precision: 0.005 }, 9)).toBe('what: 20/20, ± 0.5 %')
})
