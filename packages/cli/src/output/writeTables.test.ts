import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { checkOutputs, writeTables } from './writeTables.ts'

test('one file for each table; other files of the folder stay', async () => {
  const shell = memoryShell({ 'tables/old.csv': 'old' })
  await writeTables(shell, 'tables', [
    { name: 'counts', columns: ['carriers', 'units_mean'], rows: [[10, 330.25]] },
    { name: 'columns', columns: ['file', 'column', 'says'], rows: [['counts', 'carriers', 'number of carriers']] },
  ])
  expect([...shell.files.keys()]).toEqual(['tables/old.csv', 'tables/counts.csv', 'tables/columns.csv'])
  expect(shell.files.get('tables/counts.csv')!.split(/\r?\n/).slice(0, 2)).toEqual(['carriers,units_mean', '10,330.25'])
  expect(shell.said.err).toContain('2 files in tables')
})

test('of a study that was stopped: names of their own, so that complete tables stay', async () => {
  const shell = memoryShell({ 'tables/counts.csv': 'complete' })
  await writeTables(shell, 'tables', [{ name: 'counts', columns: ['carriers'], rows: [[10]] }], { partial: true })
  expect(shell.files.get('tables/counts.csv')).toBe('complete')
  expect(shell.files.get('tables/counts.partial.csv')).toContain('10')
  expect(shell.said.err).toContain('before the stop')
})

test('page and tables are tried before anything is run', async () => {
  const tried: string[] = []
  const shell = { ...memoryShell({}), checkWritable: async (path: string) => void tried.push(path) }
  await checkOutputs(shell, { out: 'page.html', csv: 'tables' })
  await checkOutputs(shell, {})
  expect(tried).toEqual(['page.html', 'tables/columns.csv'])
})
