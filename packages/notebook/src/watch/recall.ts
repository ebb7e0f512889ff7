/** Results of studies from one run of a notebook to the next: what was asked before of the very same lines is not made again. */
import { createHash } from 'node:crypto'
import { serialize } from 'node:v8'
import type { Effects } from '../runner/effects.ts'

export interface StudyMemory {
  readonly recall: NonNullable<Effects['recall']>
  /** A run begins: counts anew. */
  readonly begin: () => void
  /** A run is done: what it did not ask for is forgotten. */
  readonly end: () => void
  /** studies of this run: made, and recalled */
  readonly counts: () => { readonly made: number; readonly recalled: number }
}

/** A memory for one notebook. */
export function studyMemory(): StudyMemory {
  const results = new Map<string, { readonly partial: boolean }>()
  let asked = new Set<string>()
  let made = 0
  let recalled = 0
  return {
    recall: async <R extends { readonly partial: boolean }>(name: string, of: readonly unknown[], make: () => Promise<R>): Promise<R> => {
      const key = createHash('sha256').update(name).update(serialize(of)).digest('hex')
      asked.add(key)
      const before = results.get(key) as R | undefined
      if (before !== undefined) {
        recalled += 1
        // a result of its own, as stories know theirs
        return { ...before }
      }
      made += 1
      const result = await make()
      if (!result.partial) results.set(key, result)
      return result
    },
    begin: () => {
      asked = new Set()
      made = 0
      recalled = 0
    },
    end: () => {
      for (const key of results.keys()) if (!asked.has(key)) results.delete(key)
    },
    counts: () => ({ made, recalled }),
  }
}
