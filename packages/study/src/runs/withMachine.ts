/** What a study takes of the machine that it runs on: threads, and a store in front of them. Imported as `#machine`, which is `withoutMachine.ts` in a browser. */
export { keptPool } from '../store/keptPool.ts'
export { createPool } from './pool.ts'
