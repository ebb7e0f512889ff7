import type { Store, StoreEntry } from './store.ts'

/**
 * A store that lasts as long as the process: for tests, and for several studies in a row.
 *
 * @example memoryStore().report // => { recalled: 0, kept: 0, damaged: 0, trouble: null }
 */
export function memoryStore(): Store {
  const entries = new Map<string, Map<string, StoreEntry>>()
  const report = { recalled: 0, kept: 0, damaged: 0, trouble: null }
  const place = ({ from, to }: Pick<StoreEntry, 'from' | 'to'>): string => `${from}-${to}`
  return {
    report,
    read(key) {
      const found = [...(entries.get(key)?.values() ?? [])].sort((a, b) => a.from - b.from || a.to - b.to)
      for (const { from, to } of found) report.recalled += to - from
      return found.map((entry) => ({ ...entry, bytes: new Uint8Array(entry.bytes) }))
    },
    write(key, entry) {
      const under = entries.get(key) ?? new Map<string, StoreEntry>()
      entries.set(key, under.set(place(entry), { ...entry, bytes: new Uint8Array(entry.bytes) }))
      report.kept += entry.to - entry.from
    },
    drop(key, entry) {
      if (entries.get(key)?.delete(place(entry)) === true) report.damaged += 1
    },
  }
}
