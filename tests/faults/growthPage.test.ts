import { expect, test } from 'vitest'
import { type Growth, growthPage, overheadMs } from './growthPage.ts'

const one = { workers: 1, seconds: 2, replicationsPerSecond: 5000, serverMs: 0.5, workerMs: 11, askingMs: 1.5, nextMs: 1.2, load: 1 }
const growth: Growth = {
  cores: 2,
  jobs: 200,
  perJob: 50,
  alone: { seconds: 2, jobMs: 11.5 },
  workers: [one, { ...one, workers: 2, replicationsPerSecond: 9000 }],
  recoverySeconds: 8.25,
  crowds: [{ workers: 10, jobMs: 10, serverMs: 0.5, byLimits: 952, simulated: 930, enough: 21 }],
}

test('what a job costs beside its simulation is the sum of all who have to do with it', () => {
  expect(overheadMs(growth, one)).toBe(1.5)
  expect(growthPage(growth)).toContain('| 1 | 11.00 | 0.50 | 1.50 | 1.20 | 1.50 |')
})

test('rates are told beside the first, and a busy machine is said to be one', () => {
  const page = growthPage(growth)
  expect(page).toContain('| 2 | 9000 | 1.80 | 1.0 |')
  expect(page).toContain('| 10 | 0.50 | 10 | 952 | 930 | 98 % | 21 workers |')
  expect(page).not.toContain('busy with other work')
  expect(growthPage({ ...growth, workers: [{ ...one, load: 9 }] })).toContain('**The machine was busy with other work**')
})
