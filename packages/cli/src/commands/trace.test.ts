import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { trace } from './trace.ts'

const flags = { from: '2 h', to: '2.2 h', replication: 0, seed: '1' }
const shellOf = () => memoryShell({ 'small.yaml': SMALL_LINE })

test('the tables of a stretch', async () => {
  const shell = shellOf()
  expect(await trace(shell, 'small.yaml', { ...flags, csv: 'tables' }, 'loopwright trace small.yaml')).toBe(0)
  const table = shell.files.get('tables/trace-timeline.csv')!.trim().split(/\r?\n/)
  expect(table[0]).toBe('carrier,zones_visited,worked_s,waited_s,held_s,longest_wait_s,longest_wait_zone')
  expect(table).toHaveLength(5)
  expect(shell.said.out).toContain('One run: replication 0, seed 1.')
})

test('tables are those of the picture: a file of lines beside them is refused', async () => {
  await expect(trace(shellOf(), 'small.yaml', { ...flags, csv: 'tables', out: 'events.txt' }, '')).rejects.toThrow('.html')
})
