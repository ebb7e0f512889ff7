/** Studies that are made of others: on the same threads, and told of as one. */
import { openPool, type Work } from './openPool.ts'
import type { StudyOptions, StudyProgress } from './studyOptions.ts'

/**
 * Runs all parts of a study on the same threads, and ends them when it is done.
 *
 * @param work   of all of them together
 * @param study  is given the options of each
 */
export async function onSameThreads<T>(options: StudyOptions, work: Work, study: (options: StudyOptions) => Promise<T>): Promise<T> {
  // each of them puts store and engine in front of the threads itself
  const { store: _, engine: __, ...threads } = options
  const { pool, close } = openPool(threads, work)
  try {
    return await study({ ...options, pool })
  } finally {
    await close()
  }
}

/** The options of a study that is a part of another: what it tells of itself counts on from what the whole has behind it. */
export function partOf<Options extends StudyOptions>(options: Options, before: number, total: number): Options {
  const { onProgress } = options
  if (onProgress === undefined) return options
  return { ...options, onProgress: (part: StudyProgress) => onProgress({ ...part, done: before + part.done, total }) }
}
