import { createPool, type Pool } from './pool.ts'
import { keptPool } from './store/keptPool.ts'
import type { Store } from './store/store.ts'

export interface PoolOptions {
  /** threads, ≥ 1; default: one per core. Changes no result. */
  readonly workers?: number
  /** threads that are there already; they are left running */
  readonly pool?: Pool
  /** where finished replications are kept and looked up; default: nowhere. Changes no result. */
  readonly store?: Store | null
}

/**
 * The threads of a study, with its store in front.
 *
 * @param work  replications to run, where that is known
 */
export function openPool(
  options: PoolOptions,
  work = Number.POSITIVE_INFINITY,
): { readonly pool: Pool; readonly close: () => Promise<void> } {
  const threads = options.pool ?? createPool(options.workers, work)
  return {
    pool: options.store == null ? threads : keptPool(threads, options.store),
    close: async () => {
      if (options.pool === undefined) await threads.close()
    },
  }
}
