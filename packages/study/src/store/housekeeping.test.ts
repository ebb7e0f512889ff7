import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { engineMark } from './engineMark.ts'
import { folderStore } from './folderStore.ts'
import { keptIn, pruneStore } from './housekeeping.ts'

const top = mkdtempSync(join(tmpdir(), 'loopwright-prune-'))
afterAll(() => rmSync(top, { recursive: true }))
const KEY = 'ab'.repeat(32)
const OTHER = '0.0.1-0123456789abcdef'
const NOW = 2_000_000_000_000
const keep = { nowMs: NOW, beforeMs: null, all: false }

/** Five replications of this engine, a damaged entry, an entry of another engine, two half-written files, and two files of somebody else. */
function store(name: string): string {
  const folder = join(top, name)
  const mine = folderStore(folder)
  mine.write(KEY, { from: 0, to: 2, bytes: new Uint8Array(10) })
  mine.write(KEY, { from: 2, to: 5, bytes: new Uint8Array(10) })
  const under = join(folder, engineMark(), KEY.slice(0, 2), KEY.slice(2))
  writeFileSync(join(under, '7-8.runs'), 'damaged')
  for (const [name, ageMs] of [['9-10.runs.aa.part', 0] as const, ['9-10.runs.bb.part', 7_200_000] as const]) {
    writeFileSync(join(under, name), 'half')
    utimesSync(join(under, name), (NOW - ageMs) / 1000, (NOW - ageMs) / 1000)
  }
  const others = join(folder, OTHER, 'cd', 'ef'.repeat(31))
  mkdirSync(others, { recursive: true })
  writeFileSync(join(others, '0-100.runs'), 'old')
  writeFileSync(join(folder, 'notes.txt'), 'mine')
  writeFileSync(join(under, 'notes.txt'), 'mine')
  return folder
}

test('what is kept, by engine', () => {
  const kept = keptIn(store('info'))
  expect(kept.map(({ mark, current, replications, entries }) => ({ mark, current, replications, entries }))).toEqual([
    { mark: OTHER, current: false, replications: 100, entries: 1 },
    { mark: engineMark(), current: true, replications: 6, entries: 3 },
  ])
  expect(keptIn(join(top, 'nowhere'))).toEqual([])
})

test('pruning removes what is of no use, and nothing else', () => {
  const folder = store('prune')
  expect(pruneStore(folder, keep)).toEqual({ files: 3, bytes: 'damaged'.length + 'half'.length + 'old'.length, left: 0 })
  expect(
    folderStore(folder)
      .read(KEY)
      .map(({ from, to }) => [from, to]),
  ).toEqual([
    [0, 2],
    [2, 5],
  ])
  expect(readdirSync(folder).sort()).toEqual([engineMark(), 'notes.txt'].sort())
  expect(pruneStore(folder, keep)).toEqual({ files: 0, bytes: 0, left: 0 })
})

test('what is too old; everything; never the files of somebody else', () => {
  const folder = store('all')
  const under = join(folder, engineMark(), KEY.slice(0, 2), KEY.slice(2))
  utimesSync(join(under, '0-2.runs'), 1, 1)
  utimesSync(join(under, '2-5.runs'), NOW / 1000, NOW / 1000)
  pruneStore(folder, { ...keep, beforeMs: NOW - 1000 })
  expect(existsSync(join(under, '0-2.runs'))).toBe(false)
  expect(existsSync(join(under, '2-5.runs'))).toBe(true)
  pruneStore(folder, { ...keep, all: true })
  expect(keptIn(folder)).toEqual([])
  expect(readdirSync(folder).sort()).toEqual([engineMark(), 'notes.txt'].sort())
  expect(readdirSync(under)).toEqual(['notes.txt'])
})

test('a folder in place of an entry stays, and what cannot be read goes', () => {
  const folder = store('odd')
  const under = join(folder, engineMark(), KEY.slice(0, 2), KEY.slice(2))
  mkdirSync(join(under, '20-21.runs'))
  writeFileSync(join(under, '30-31.runs'), 'closed', { mode: 0o000 })
  expect(keptIn(folder).find(({ current }) => current)!.entries).toBe(4)
  expect(pruneStore(folder, keep)).toMatchObject({ left: 0 })
  expect(readdirSync(under).sort()).toEqual(['0-2.runs', '2-5.runs', '20-21.runs', '9-10.runs.aa.part', 'notes.txt'])
})
