// Threads
export { createPool } from '../runs/pool.ts'
export type { Pool } from '../runs/pool.ts'
export { callingThread } from '../runs/callingThread.ts'

// A share of a study
export { partPool } from '../share/partPool.ts'
export type { PartPool, Share } from '../share/partPool.ts'
export { isOthersShare, OTHERS_SHARE, OthersShare } from '../share/othersShare.ts'

// Results kept
export { folderStore } from '../store/folderStore.ts'
export { engineMark } from '../store/engineMark.ts'
export { faultWords } from '../store/faultWords.ts'
export { memoryStore } from '../store/memoryStore.ts'
export type { Store, StoreEntry, StoreReport } from '../store/store.ts'
export { keptIn, pruneStore } from '../store/housekeeping.ts'
export type { KeptRuns, PruneOptions } from '../store/housekeeping.ts'
export { mergeStores } from '../store/mergeStores.ts'
export type { MergedStores } from '../store/mergeStores.ts'
