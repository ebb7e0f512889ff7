import { expect, test } from 'vitest'
import { memoryShell } from '../shell/memoryShell.ts'
import { writeTables } from './writeTables.ts'

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
