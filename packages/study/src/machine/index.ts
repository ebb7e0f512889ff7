// Threads
export { createPool } from '../runs/pool.ts'
export type { Pool } from '../runs/pool.ts'
export { callingThread } from '../runs/callingThread.ts'

// Results kept
export { folderStore } from '../store/folderStore.ts'
export { faultWords } from '../store/faultWords.ts'
export { memoryStore } from '../store/memoryStore.ts'
export type { Store, StoreEntry, StoreReport } from '../store/store.ts'
export { keptIn, pruneStore } from '../store/housekeeping.ts'
export type { KeptRuns, PruneOptions } from '../store/housekeeping.ts'
