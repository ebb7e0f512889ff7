import { accountWords, readTable, readTimes } from '@loopwright/measure'
import { expect, test } from 'vitest'
import { DAMAGED } from './damaged.ts'

/** What is read of a table, and all that is told of it: by an error, or beside what was read. */
function readOf(bytes: Uint8Array): { seconds: number[]; told: string } {
  try {
    const { observations, account, said, doubts } = readTimes(readTable(bytes, 'table'))
    // rows read + rows refused = rows in the file, whatever is wrong with it
    expect(account.read + account.refusals.filter(({ wholeRow }) => wholeRow).length).toBe(account.rows)
    const refused = account.refusals.map(({ place, reason }) => `${place}: ${reason}`)
    return {
      seconds: observations.map(({ observedSeconds }) => observedSeconds),
      told: [accountWords(account), ...refused, ...said, ...doubts].join('\n'),
    }
  } catch (error) {
    if (!(error instanceof Error && error.name === 'TableError')) throw error
    return { seconds: [], told: error.message }
  }
}

test('there are sixty', () => expect(DAMAGED).toHaveLength(60))

// a table that hangs runs into the time limit; none takes a tenth of it
test.each(DAMAGED)('$name', { timeout: 10_000 }, ({ bytes, may, tells }) => {
  const { seconds, told } = readOf(bytes)
  expect(seconds.filter((one) => !may.some((right) => Math.abs(right - one) < 1e-6))).toEqual([])
  expect(told).toMatch(tells)
})
