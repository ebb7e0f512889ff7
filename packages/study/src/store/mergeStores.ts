/** Stores put together: what several machines have run, in one place. */
import { readFileSync, statSync } from 'node:fs'
import { engineMark } from './engineMark.ts'
import { readEntryFile } from './entryFile.ts'
import { folderStore } from './folderStore.ts'
import { entriesIn } from './housekeeping.ts'

/** What was put together. */
export interface MergedStores {
  /** written to the store, those that it had already too */
  readonly replications: number
  readonly entries: number
  /** entries of no use: cut off, changed, or in the wrong place */
  readonly damaged: number
  /** what other engines have run, which gives this one nothing: by their marks */
  readonly others: readonly { readonly mark: string; readonly replications: number }[]
  /** folders without a store */
  readonly empty: readonly string[]
  /** why something could not be read or written; null: nothing went wrong */
  readonly trouble: string | null
}

/**
 * Copies the entries of stores into one. Each is checked on the way; nothing is taken out of a store, and doing it twice is no harm.
 *
 * @param folders  stores to read
 * @param into     folder of the store to write; made with the first entry
 * @example mergeStores([], 'no folder of this name') // => { replications: 0, entries: 0, damaged: 0, others: [], empty: [], trouble: null }
 */
export function mergeStores(folders: readonly string[], into: string): MergedStores {
  const store = folderStore(into)
  const mine = engineMark()
  const others = new Map<string, number>()
  const empty: string[] = []
  let entries = 0
  let replications = 0
  let damaged = 0
  let unread = 0
  for (const folder of folders) {
    const files = entriesIn(folder)
    if (files.length === 0) empty.push(folder)
    for (const { mark, path, key, from, to } of files) {
      if (mark !== mine) {
        others.set(mark, (others.get(mark) ?? 0) + to - from)
        continue
      }
      const file = bytesOf(path)
      if (file === null) {
        unread += 1
        continue
      }
      const entry = readEntryFile(file, key)
      if (entry === null || entry.from !== from || entry.to !== to) {
        damaged += 1
        continue
      }
      store.write(key, entry)
      if (store.report.trouble !== null) break
      entries += 1
      replications += to - from
    }
  }
  const trouble = store.report.trouble ?? (unread > 0 ? `${unread} files could not be read` : null)
  return { replications, entries, damaged, others: [...others].map(([mark, count]) => ({ mark, replications: count })), empty, trouble }
}

function bytesOf(path: string): Uint8Array | null {
  try {
    return statSync(path).isFile() ? readFileSync(path) : null
  } catch {
    return null
  }
}
