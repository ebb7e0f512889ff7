import { describe, expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { progress, type RunsShown } from './progress.ts'

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

  test('a stop says how far it came, and of how many where that was known', () => {
    const [before, during] = [memoryShell(), memoryShell()]
    progress(before, 'what', 2600).end(true)
    expect(before.said.err).toBe('what\nstopped: 0 replications in 0 s\n')
    const told = progress(during, 'what', 2600)
    told.onProgress({ done: 10, total: 2600 })
    told.end(true)
    expect(during.said.err).toBe('what\nstopped: 10 of 2\u202f600 replications in 0 s\n')
  })
})

/** the lines that a terminal showed one after the other */
function shown(total: number, steps: readonly (RunsShown & { readonly clock: number })[], columns = 80): string[] {
  const shell = memoryShell({}, { terminal: true, columns })
  const progressed = progress(shell, 'what', total)
  for (const { clock, ...told } of steps) {
    shell.clock = clock
    progressed.onProgress(told)
  }
  progressed.end(false)
  return shell.said.err.split('\r\u001b[2K')
}

test('on a terminal the line is renewed, not too often, and taken away at the end', () => {
  const lines = shown(20, [
    { clock: 0, done: 1, total: 20, precision: 0.02 },
    { clock: 50, done: 2, total: 20, precision: 0.02 },
    { clock: 3000, done: 10, total: 20, precision: 0.02 },
  ])
  expect(lines).toEqual([
    'what …',
    'what: 1 of 20 runs, means ± 2.0 %',
    'what: 10 of 20 runs, means ± 2.0 %, 3 s left',
    'done: 10 replications in 3 s\n',
  ])
})

describe('a total that people have seen does not change', () => {
  test('one that grows all the same is told no more', () =>
    expect(
      shown(20, [
        { clock: 3000, done: 10, total: 20 },
        { clock: 4000, done: 12, total: 40 },
        { clock: 5000, done: 39, total: 40 },
      ]).slice(1, -1),
    ).toEqual(['what: 10 of 20 runs, 3 s left', 'what: 12 runs', 'what: 39 runs']))

  test('it is told once it is settled', () =>
    expect(
      shown(20, [
        { clock: 3000, done: 10, total: 12, settled: false },
        { clock: 4000, done: 20, total: 40, settled: true },
      ]).slice(1, -1),
    ).toEqual(['what: 10 runs', 'what: 20 of 40 runs, 4 s left']))

  test('where it is never known before the end, it is not told', () =>
    expect(shown(0, [{ clock: 3000, done: 10, total: 12 }])[1]).toBe('what: 10 runs'))
})

test('no line reaches the last column', () => {
  const what = 'a long name of what is being decided, far longer than sixty columns can hold in one line'
  for (const line of shown(20, [{ clock: 3000, done: 10, total: 20, what }], 60)) expect([...line.trimEnd()].length).toBeLessThan(60)
})

test('a sentence that stays takes the place of the line', () => {
  const [there, elsewhere] = [memoryShell({}, { terminal: true }), memoryShell()]
  for (const shell of [there, elsewhere]) progress(shell, 'what', 20).say('so far, most with 12')
  expect(there.said.err).toBe('what …\r\u001b[2Kso far, most with 12\n')
  expect(elsewhere.said.err).toBe('what\nso far, most with 12\n')
})
