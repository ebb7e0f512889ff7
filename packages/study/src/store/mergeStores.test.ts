import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { engineMark } from './engineMark.ts'
import { folderStore } from './folderStore.ts'
import { entriesIn } from './housekeeping.ts'
import { mergeStores } from './mergeStores.ts'

const KEY = 'ab'.repeat(32)
let top = ''
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'merge stores ä '))
})
afterEach(() => rmSync(top, { recursive: true, force: true }))

const filled = (name: string, ...ranges: readonly [number, number][]): string => {
  const folder = join(top, name)
  for (const [from, to] of ranges) folderStore(folder).write(KEY, { from, to, bytes: Uint8Array.from([from, to]) })
  return folder
}

test('what several stores hold is in one afterwards, and each of them is as it was', () => {
  const [one, two, into] = [filled('one', [0, 5], [10, 12]), filled('two', [5, 10]), join(top, 'all')]
  const merged = mergeStores([one, two], into)
  expect(merged).toEqual({ replications: 12, entries: 3, damaged: 0, others: [], empty: [], trouble: null })
  expect(
    folderStore(into)
      .read(KEY)
      .map(({ from, to, bytes }) => [from, to, ...bytes]),
  ).toEqual([
    [0, 5, 0, 5],
    [5, 10, 5, 10],
    [10, 12, 10, 12],
  ])
  expect(folderStore(one).read(KEY)).toHaveLength(2)
  const files = (): string[] => readdirSync(into, { recursive: true, encoding: 'utf8' }).sort()
  const before = files()
  mergeStores([one, two, into], into)
  expect(files()).toEqual(before)
})

test('damaged entries stay out', () => {
  const one = filled('one', [0, 5], [5, 10])
  const { path } = entriesIn(one)[0]!
  const bytes = readFileSync(path)
  bytes[bytes.length - 1]! ^= 1
  writeFileSync(path, bytes)
  const into = join(top, 'all')
  expect(mergeStores([one], into)).toMatchObject({ replications: 5, entries: 1, damaged: 1 })
  expect(
    folderStore(into)
      .read(KEY)
      .map(({ from }) => from),
  ).toEqual([5])
})

test('runs of another engine stay out, and are named by its mark', () => {
  const one = filled('one', [0, 5])
  const other = `${engineMark().slice(0, -16)}${'0'.repeat(16)}`
  mkdirSync(join(one, other, 'ab', 'ab'.repeat(31)), { recursive: true })
  writeFileSync(join(one, other, 'ab', 'ab'.repeat(31), '5-9.runs'), 'x')
  expect(mergeStores([one], join(top, 'all'))).toMatchObject({ replications: 5, damaged: 0, others: [{ mark: other, replications: 4 }] })
})

test('a folder without a store is named; a store that cannot be written says why', () => {
  expect(mergeStores([join(top, 'none')], join(top, 'all'))).toMatchObject({ entries: 0, empty: [join(top, 'none')], trouble: null })
  writeFileSync(join(top, 'file'), '')
  const { entries, trouble } = mergeStores([filled('one', [0, 5])], join(top, 'file'))
  expect([entries, trouble]).toEqual([0, expect.stringContaining('a part of the path is a file')])
})
