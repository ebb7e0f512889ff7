/** Results of studies from one run of a notebook to the next: what was asked before of the very same lines is not made again. */
import { createHash } from 'node:crypto'
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

/** What JSON leaves out, as texts: the key of a study tells apart all that its lines tell apart. */
function exact(_: string, value: unknown): unknown {
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))) return `number ${Object.is(value, -0) ? '-0' : value}`
  if (value instanceof Map) return ['map', ...value]
  if (value instanceof Set) return ['set', ...value]
  return value
}

/** A memory for one notebook. */
export function studyMemory(): StudyMemory {
  const results = new Map<string, { readonly partial: boolean }>()
  let asked = new Set<string>()
  let made = 0
  let recalled = 0
  return {
    recall: async <R extends { readonly partial: boolean }>(name: string, of: readonly unknown[], make: () => Promise<R>): Promise<R> => {
      const key = createHash('sha256').update(name).update(JSON.stringify(of, exact)).digest('hex')
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
