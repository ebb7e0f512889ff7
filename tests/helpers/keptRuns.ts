/**
 * Runs for tests that judge what is told of runs: whichever of them comes first runs them, in whichever process, and the next time too, as long as the engine is the
 * same to the byte (`engineMark`: the text of kernel, stats, line and study, V8, the processor). Tests that judge runs, engines or stores take no runs from here.
 */
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { engineMark, folderStore, pruneStore, type Store } from '@loopwright/study/machine'
import { TOP } from '../tidy/sources.ts'

let store: Store | null = null

/** One for all files of a process, beside the caches of this project. */
export function keptRuns(): Store {
  store ??= storeOfThisEngine(join(TOP, 'node_modules/.cache/runs-of-tests'))
  return store
}

/** The store in a folder, after what other engines left there is removed. */
export function storeOfThisEngine(folder: string): Store {
  const others = existsSync(folder) && readdirSync(folder).some((name) => name !== engineMark())
  if (others) pruneStore(folder, { nowMs: 0, beforeMs: null, all: false })
  return folderStore(folder)
}
