import { expect, test } from 'vitest'
import { StatisticsError } from './statisticsError.ts'

test('a refusal has a code to test for and a sentence to show', () => {
  const error = new StatisticsError('E_TOO_FEW', 'Cannot give an interval from 1 replication: give at least 2.')
  expect(error).toBeInstanceOf(Error)
  expect([error.name, error.code, error.message]).toEqual([
    'StatisticsError',
    'E_TOO_FEW',
    'Cannot give an interval from 1 replication: give at least 2.',
  ])
})
