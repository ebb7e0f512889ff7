import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { accountWords, readTable, readTimes } from '@loopwright/measure'
import { expect, test } from 'vitest'
import { readWholeBytes } from '../../packages/cli/src/shell/nodeFiles.ts'
import { DAMAGED } from './damaged.ts'

/** What is read of a table, and all that is told of it: by an error, or beside what was read. */
function readOf(bytes: Uint8Array): { seconds: number[]; told: string } {
  try {
    const { observations, account, said, doubts } = readTimes(readTable(bytes, 'table'))
    // rows read + rows refused = rows in the file, whatever is wrong with it
    expect(account.read + account.refusals.filter(({ wholeRow }) => wholeRow).length).toBe(account.rows)
    expect(account.refusals.filter(({ place }) => !/^(line|row) \d+|^cell [A-Z]+\d+/.test(place))).toEqual([])
    const refused = account.refusals.map(({ place, reason }) => `${place}: ${reason}`)
    return {
      seconds: observations.map(({ observedSeconds }) => observedSeconds),
      told: [accountWords(account), ...refused, ...said, ...doubts].join('\n'),
    }
  } catch (error) {
    if (!(error instanceof Error && error.name === 'TableError')) throw error
    expect(error.message).toMatch(/^"table"(, (line|row|cell|column) \S+.*)?: /)
    return { seconds: [], told: error.message }
  }
}

test('there are sixty', () => expect(DAMAGED).toHaveLength(60))

/** Seconds of this process's own work: what else the machine does counts for nothing. */
function worked(of: () => void): number {
  const start = process.cpuUsage()
  of()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1e6
}

// whoever sent the table waits a second at most; each takes some hundredths of it
test.each(DAMAGED)('$name', ({ bytes, may, tells }) => {
  let read = { seconds: [] as number[], told: '' }
  expect(worked(() => (read = readOf(bytes)))).toBeLessThan(1)
  expect(read.seconds.filter((one) => !may.some((right) => Math.abs(right - one) < 1e-6))).toEqual([])
  expect(read.told).toMatch(tells)
})

const LINES = 10_000
const grown = (text: string): Uint8Array => {
  const last = text.split('\n').findLast((line) => line !== '') ?? ''
  return new TextEncoder().encode(`${text.replace(/\n?$/, '\n')}${`${last}\n`.repeat(LINES)}`)
}

test('what is wrong 10,000 times takes about as long as what is right', { tags: 'long' }, () => {
  const texts = DAMAGED.filter(({ name, bytes }) => name.startsWith('csv:') && bytes.length > 10).map(({ name, bytes }) => ({
    name,
    bytes: grown(new TextDecoder().decode(bytes)),
  }))
  const right = grown('task,seconds\nwire,45\nwire,47\n')
  // compiled code and a warm heap for all of them
  readOf(right)
  const usual = worked(() => readOf(right))
  const slow = texts.map(({ name, bytes }) => ({ name, times: worked(() => readOf(bytes)) / usual })).filter(({ times }) => times > 25)
  // most of them take once to four times as long; what takes the square of the rows takes hundreds of times
  expect(slow).toEqual([])
})

test('a file of a hundred megabytes is refused by its size, before it is read', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-'))
  try {
    const file = join(folder, 'times.csv')
    writeFileSync(file, 'task,seconds\nwire,45\n')
    truncateSync(file, 100 * 2 ** 20)
    const start = process.memoryUsage().arrayBuffers
    await expect(readWholeBytes(file)).rejects.toThrow(/times\.csv" has 100 MB; files of up to 20 MB are read/)
    expect(process.memoryUsage().arrayBuffers - start).toBeLessThan(50 * 2 ** 20)
  } finally {
    rmSync(folder, { recursive: true })
  }
})
