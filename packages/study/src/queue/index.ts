// Where a queue is
export { queueAddress, queueName, QUEUE_ENVIRONMENT } from './queueAddress.ts'
export type { QueueAccess, QueueAddress } from './queueAddress.ts'
export type { QueuePlace } from './redis.ts'

// A study by a queue
export { openQueuePool } from './queuePool.ts'
export type { QueuePoolOptions } from './queuePool.ts'

// A worker
export { workAtQueue } from './queueWorker.ts'
export type { QueueWorkerOptions, WorkDone } from './queueWorker.ts'

// What is at a queue
export { cancelQueue, queueState, retryQueue } from './queueState.ts'
export type { QueueCounts, QueueState } from './queueState.ts'
export type { Present } from './registry.ts'
