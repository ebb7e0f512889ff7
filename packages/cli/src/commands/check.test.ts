import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { check } from './check.ts'

test('the page and the tables hold what the terminal says', async () => {
  const shell = memoryShell({ 'small.yaml': SMALL_LINE })
  expect(await check(shell, 'small.yaml', { out: 'check.html', csv: 'tables' }, 'loopwright check small.yaml')).toBe(0)
  const page = shell.files.get('check.html')!
  expect(page).toContain('<h1>What was understood of the scenario?</h1>')
  expect(page).toContain('Counted: the second shift, 08:00 to 10:00')
  expect(shell.said.out.replaceAll(/\s+/g, ' ')).toContain('Counted: the second shift, 08:00 to 10:00')
  expect(shell.files.get('tables/check-stations.csv')).toMatch(/^station,zone,duties,work_s,/)
  expect(shell.said.out).toMatch(/\nPage: check.html\n$/)
})

test('a page that may not be written is found first', async () => {
  const shell = memoryShell({ 'small.yaml': SMALL_LINE })
  await expect(check(shell, 'small.yaml', { out: 'closed/check.html' }, 'loopwright check small.yaml')).rejects.toThrow('cannot be written')
  expect(shell.said.out).toBe('')
})
