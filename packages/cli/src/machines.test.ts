import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { notebook } from '@loopwright/notebook'
import { folderStore } from '@loopwright/study/machine'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { main } from './main.ts'

let top = ''
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'shares '))
})
afterEach(() => rmSync(top, { recursive: true, force: true }))

const FILES = { 'small.yaml': SMALL_LINE }
const run = async (...words: string[]): Promise<{ code: number; out: string; err: string }> => {
  const shell = { ...memoryShell(FILES), openStore: async (folder: string) => folderStore(folder) }
  const code = await main(words, shell)
  return { code, ...shell.said }
}
const STUDY = ['sweep', 'small.yaml', '--carriers', '2..4', '--replications', '20', '--json']

test('shares on machines of their own, put together, print what one machine prints, and nothing is run again', async () => {
  const whole = await run(...STUDY, '--fresh')
  for (const part of [1, 2, 3]) {
    const { code, out, err } = await run(...STUDY, '--part', `${part}/3`, '--store', join(top, `part-${part}`))
    expect([code, out]).toEqual([0, ''])
    expect(err).toMatch(new RegExp(`share ${part} of 3: \\d+ new replications are kept in`))
    expect(err.replaceAll('\n', ' ')).toContain('loopwright store merge')
  }
  const merged = await run('store', 'merge', ...[1, 2, 3].map((part) => join(top, `part-${part}`)), '--store', join(top, 'all'))
  expect([merged.code, merged.out]).toEqual([0, expect.stringMatching(/^105 replications in \d+ files are in /)])
  const together = await run(...STUDY, '--store', join(top, 'all'))
  expect(together.out).toBe(whole.out)
  expect(together.err).toContain('(105 of them from the store)')
  // a share of a study that is all there tells the whole of it
  expect((await run(...STUDY, '--part', '2/3', '--store', join(top, 'all'))).out).toBe(whole.out)
})

test('the commands of MACHINES.md by shares, one after the other, run all that the study needs', { tags: 'long' }, async () => {
  const page = readFileSync(new URL('../MACHINES.md', import.meta.url), 'utf8')
  const block = /^## By shares$[\s\S]*?^```sh\n([\s\S]*?)^```$/m.exec(page)![1]!
  const [share, merge, whole, ...others] = block
    .trim()
    .split('\n')
    .map((line) => line.replace('npx loopwright ', '').replace('line.yaml', 'small.yaml').replace('2000', '20').split(' '))
  expect(others).toEqual([])
  const inside = (words: readonly string[]): string[] => words.map((word) => (/^part-\d$/.test(word) ? join(top, word) : word))
  for (let part = 1; part <= 8; part += 1) {
    const words = share!.map((word) => word.replace('3/8', `${part}/8`).replace('part-3', `part-${part}`))
    expect((await run(...inside(words))).code).toBe(0)
  }
  const store = ['--store', join(top, 'together')]
  expect((await run(...inside(merge!), ...store)).code).toBe(0)
  const { code, out, err } = await run(...whole!, ...store)
  expect([code, out]).toEqual([0, (await run(...whole!, '--fresh')).out])
  expect(err).toMatch(/done: (\d+) replications \(\1 of them from the store\)/)
})

test('a notebook is told when nothing of it is missing; until then a share says what it has run', { tags: 'long' }, async () => {
  const exports = {
    default: notebook({ title: 'Small', scenario: 'small.yaml' }, async ({ sweep, story, show }) => {
      const result = await sweep({ carriers: [3, 4], replications: 20 })
      show(...story(result).cells)
    }),
  }
  const typed = async (...words: string[]) => {
    const shell = { ...memoryShell({ ...FILES, 'study.ts': '' }), openStore: async (folder: string) => folderStore(folder) }
    const code = await main(['notebook', 'study.ts', '--out', 'page.html', ...words], {
      ...shell,
      loadNotebook: async () => ({ exports, files: [], steps: [] }),
    })
    return { code, ...shell.said, page: shell.files.get('page.html') }
  }
  const store = ['--store', join(top, 'notebook')]
  const first = await typed('--part', '1/2', ...store)
  expect(first).toMatchObject({ code: 0, out: '', err: expect.stringContaining('share 1 of 2: ') })
  expect(first.page).toBeUndefined()
  await typed('--part', '2/2', ...store)
  const [shared, whole] = [await typed('--part', '1/2', ...store), await typed('--fresh')]
  expect([shared.code, shared.out]).toEqual([0, whole.out])
  expect(shared.page).toMatch(/^<!doctype html>/i)
})

test('shares that cannot be are refused in a sentence', async () => {
  expect(await run(...STUDY, '--part', '4/3')).toMatchObject({ code: 2, err: expect.stringContaining('from 1/8 to 8/8') })
  expect(await run(...STUDY, '--part', '1/3', '--fresh')).toMatchObject({
    code: 2,
    err: '--part keeps its runs in a store; leave out --fresh\n',
  })
  expect(await run(...STUDY, '--part', '1/3', '--engine', 'events')).toMatchObject({ code: 2, err: expect.stringContaining('--engine') })
})

test('a share whose runs cannot be kept fails and says why', async () => {
  const { code, err } = await run(...STUDY, '--part', '1/3', '--store', '/dev/null/x')
  expect(code).toBe(1)
  expect(err.replaceAll('\n', ' ')).toContain('the runs of share 1 of 3 are not kept:')
})
