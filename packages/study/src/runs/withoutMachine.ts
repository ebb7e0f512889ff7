/** What stands in for the machine in a browser: the calling thread, itself a worker of the page, and no store. */
import type { Store } from '../store/store.ts'
import { callingThread } from './callingThread.ts'
import type { Pool } from './pool.ts'

/** The calling thread, whatever number is asked for. */
export function createPool(): Pool {
  return callingThread()
}

/** @throws Error  a browser keeps no runs */
export function keptPool(_: Pool, _store: Store): Pool {
  throw new Error('a store of runs is kept in files, which a browser has none of; leave out "store"')
}
