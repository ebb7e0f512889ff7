import { expect, test } from 'vitest'
import { allowed, besideMs, type Growth, growthPage, type Measured, timesOne } from './growthPage.ts'

const one: Measured = { workers: 1, replicationsPerSecond: 5000, serverMs: 0.5, workerMs: 10, askingMs: 1.5, moreMs: 1.25, load: 1 }
const growth: Growth = {
  cores: 2,
  loadBefore: 0.5,
  bare: {
    plain: [1, 2].map((processes) => ({ processes, timesOne: processes, byProcessor: processes })),
    runs: [
      { processes: 1, timesOne: 1, byProcessor: 1 },
      { processes: 2, timesOne: 1.75, byProcessor: 1.875 },
    ],
  },
  studies: [{ what: 'a sweep', jobs: 200, perJob: 50, aloneMs: 11.5, workers: [one, { ...one, workers: 2, replicationsPerSecond: 8500 }] }],
  recoverySeconds: 8.25,
  crowds: [{ workers: 10, jobMs: 10, serverMs: 0.5, byLimits: 952, simulated: 930, enough: 21 }],
}

test('cores are shared: one worker has one of them at most, and all together have no more than there are', () => {
  expect(besideMs(one)).toBe(2)
  expect(allowed(2, 1, one)).toBe(100)
  expect(allowed(2, 2, one)).toBeCloseTo(2000 / 12, 9)
  expect(timesOne(2, 2, one)).toBeCloseTo(20 / 12, 9)
  expect(timesOne(2, 4, one)).toBe(timesOne(2, 2, one))
  expect(timesOne(64, 4, one)).toBe(4)
})

test('rates are told beside the first, and a busy machine is said to be one', () => {
  const page = growthPage(growth)
  expect(page).toContain('| 2 | 10.00 | 0.50 | 1.50 | 1.25 | 8500 | 1.70 | 97 % | 1.67 | 1.0 |')
  expect(page).toContain('| 2 | 2.00 | 2.00 | 1.75 | 1.88 |')
  expect(page).toContain('| 10 | 0.50 | 10 | 952 | 930 | 98 % | 21 workers |')
  expect(page).not.toContain('busy with other work')
  expect(growthPage({ ...growth, loadBefore: 9 })).toContain('**The machine was busy with other work**')
})
