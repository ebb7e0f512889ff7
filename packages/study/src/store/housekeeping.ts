/** What a store's folder holds, and removing what is of no use. Other files in the folder are left alone. */
import { readdirSync, readFileSync, rmdirSync, rmSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { engineMark } from './engineMark.ts'
import { readEntryFile } from './entryFile.ts'

const MARK = /^\d+\.\d+\.\d+[^/\\]*-[0-9a-f]{16}$/
const HIGH = /^[0-9a-f]{2}$/
const LOW = /^[0-9a-f]{62}$/
const ENTRY = /^(\d+)-(\d+)\.runs$/
const PART = /^\d+-\d+\.runs\.[0-9a-f]+\.part$/
/** a half-written file as old as this has nobody left who writes it; milliseconds */
const PART_MS = 3_600_000

/** What is kept for one engine. */
export interface KeptRuns {
  readonly mark: string
  /** the engine that runs now */
  readonly current: boolean
  readonly replications: number
  readonly entries: number
  readonly bytes: number
}

/** What of a store goes. */
export interface PruneOptions {
  readonly nowMs: number
  /** entries written before go too; null: age does not count */
  readonly beforeMs: number | null
  readonly all: boolean
}

export interface PruneResult {
  readonly files: number
  readonly bytes: number
  /** files of no use that the system does not let go */
  readonly left: number
}

interface KeptFile {
  readonly mark: string
  readonly path: string
  readonly key: string
  readonly name: string
}

/**
 * By engine; empty where there is no store.
 *
 * @example keptIn('no folder of this name') // => []
 */
export function keptIn(folder: string): KeptRuns[] {
  const all = new Map<string, { replications: number; entries: number; bytes: number }>()
  for (const { mark, path, name } of filesOf(folder)) {
    const match = ENTRY.exec(name)
    const stat = statOf(path)
    if (stat === null) continue
    const { size } = stat
    const of = all.get(mark) ?? { replications: 0, entries: 0, bytes: 0 }
    of.bytes += size
    if (match !== null) {
      of.entries += 1
      of.replications += Number(match[2]) - Number(match[1])
    }
    all.set(mark, of)
  }
  return [...all].map(([mark, of]) => ({ mark, current: mark === engineMark(), ...of }))
}

/**
 * Removes what other engines left, damaged entries, half-written files that nobody writes any more, and what is asked for beside.
 *
 * A folder in place of an entry is somebody else's and stays; what another process removes at the same time is counted there.
 *
 * @returns  what was removed
 * @example pruneStore('no folder of this name', { nowMs: 0, beforeMs: null, all: true }) // => { files: 0, bytes: 0, left: 0 }
 */
export function pruneStore(folder: string, { nowMs, beforeMs, all }: PruneOptions): PruneResult {
  const removed = { files: 0, bytes: 0, left: 0 }
  for (const { mark, path, key, name } of filesOf(folder)) {
    const stat = statOf(path)
    if (stat === null) continue
    const useless = PART.test(name)
      ? nowMs - stat.mtimeMs > PART_MS
      : mark !== engineMark() || (beforeMs !== null && stat.mtimeMs < beforeMs) || isDamaged(path, key)
    if (!all && !useless) continue
    const went = remove(path)
    if (went === 'removed') {
      removed.files += 1
      removed.bytes += stat.size
    } else if (went === 'stays') removed.left += 1
  }
  for (const mark of namesIn(folder, MARK)) {
    for (const high of namesIn(join(folder, mark), HIGH)) {
      for (const low of namesIn(join(folder, mark, high), LOW)) removeEmpty(join(folder, mark, high, low))
      removeEmpty(join(folder, mark, high))
    }
    removeEmpty(join(folder, mark))
  }
  return removed
}

/**
 * Where the entries of a store stand, in the order of marks, keys and names; nothing is read.
 *
 * @example entriesIn('no folder of this name') // => []
 */
export function entriesIn(folder: string): { mark: string; path: string; key: string; from: number; to: number }[] {
  return filesOf(folder).flatMap(({ mark, path, key, name }) => {
    const match = ENTRY.exec(name)
    return match === null ? [] : [{ mark, path, key, from: Number(match[1]), to: Number(match[2]) }]
  })
}

function filesOf(folder: string): KeptFile[] {
  return namesIn(folder, MARK).flatMap((mark) =>
    namesIn(join(folder, mark), HIGH).flatMap((high) =>
      namesIn(join(folder, mark, high), LOW).flatMap((low) => {
        const under = join(folder, mark, high, low)
        return [...namesIn(under, ENTRY), ...namesIn(under, PART)].map((name) => ({
          mark,
          path: join(under, name),
          key: `${high}${basename(under)}`,
          name,
        }))
      }),
    ),
  )
}

/** Sorted; empty where there is no such folder. */
function namesIn(folder: string, pattern: RegExp): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => pattern.test(name))
      .sort()
  } catch {
    return []
  }
}

function statOf(path: string): { readonly size: number; readonly mtimeMs: number } | null {
  try {
    const found = statSync(path)
    return found.isFile() ? found : null
  } catch {
    return null
  }
}

/** One that cannot be read is of as little use. */
function isDamaged(path: string, key: string): boolean {
  try {
    return readEntryFile(readFileSync(path), key) === null
  } catch {
    return true
  }
}

function remove(path: string): 'removed' | 'gone' | 'stays' {
  try {
    rmSync(path)
    return 'removed'
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'gone' : 'stays'
  }
}

/** Leaves it where something is in it, or somebody just made it anew. */
function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder)
  } catch {
    // not empty, or gone
  }
}
