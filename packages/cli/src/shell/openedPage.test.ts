import { expect, test } from 'vitest'
import { main } from '../main.ts'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { withPage } from './openedPage.ts'
import { DONE, INTERRUPTED } from './shell.ts'

test('the page is opened when the command has written it', async () => {
  const shell = memoryShell({ 'small.yaml': SMALL_LINE })
  expect(await main(['run', 'small.yaml', '--out', 'out/page.html', '--open'], shell)).toBe(0)
  expect(shell.files.has('out/page.html')).toBe(true)
  expect(shell.opened).toEqual(['out/page.html'])
})

test('not without being asked, and not where the command was stopped', async () => {
  const shell = memoryShell()
  expect(await withPage(shell, { out: 'a.html' }, async () => DONE)).toBe(DONE)
  expect(await withPage(shell, { out: 'a.html', open: true }, async () => INTERRUPTED)).toBe(INTERRUPTED)
  expect(shell.opened).toEqual([])
})

test('where nothing can open it, one sentence says so, and the command has done its work', async () => {
  const shell = memoryShell({}, { browser: false })
  expect(await withPage(shell, { out: 'a.html', open: true }, async () => DONE)).toBe(DONE)
  expect(shell.said.err).toBe('nothing here opens pages by itself; open a.html in a browser\n')
})

test('without a page nothing is run', async () => {
  const shell = memoryShell()
  const run = async (): Promise<number> => {
    throw new Error('was run')
  }
  await expect(withPage(shell, { open: true }, run)).rejects.toMatchObject({ name: 'Misuse', message: expect.stringContaining('--out') })
  await expect(withPage(shell, { open: true, out: 'a.txt' }, run)).rejects.toThrow('"a.txt" is none')
})
