import { expect, test } from 'vitest'
import * as messages from './messages.ts'
import { StatisticsError } from './statisticsError.ts'

test('each is one sentence that names the value met and what to do', () => {
  const make = Object.entries(messages) as [string, (...values: unknown[]) => StatisticsError][]
  expect(make.length).toBeGreaterThan(7)
  for (const [name, of] of make) {
    const error = of(...[7, 8, 9, 10].slice(0, of.length))
    expect(error, name).toBeInstanceOf(StatisticsError)
    expect(error.message, name).toMatch(/^[A-Z0-9].*: .*\.$/)
    expect(error.message, name).toMatch(/7|8/)
    expect(error.message, name).not.toMatch(/undefined|NaN|\.\.$/)
  }
})

test('one is not many', () => {
  expect(messages.tooFew('an interval', 1, 'replication', 2).message).toBe('Cannot give an interval from 1 replication: give at least 2.')
  expect(messages.tooFew('an interval', 0, 'replication', 2).message).toBe('Cannot give an interval from 0 replications: give at least 2.')
})
