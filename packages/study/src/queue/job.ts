/** What travels to a worker: names of things and numbers, no code and no file. */
import { createHash } from 'node:crypto'
import type { Kept } from '../runs/task.ts'

/** Some replications of a line. */
export interface Job {
  /** of the engine that asks; no other may answer */
  readonly mark: string
  /** of the runs, as a store calls them */
  readonly key: string
  /** digest of the line's text */
  readonly line: string
  readonly carriers: number
  readonly seed: string
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
  readonly want: Kept
}

/** The name of a job: the same for the same runs, so that asking twice is asking once. */
export const jobId = ({ key, from, to }: Pick<Job, 'key' | 'from' | 'to'>): string => `${key}-${from}-${to}`

/** More replications in one job than anybody asks for. */
const REPLICATIONS_MAX = 10_000

/**
 * A job as it came from the queue, or why it is none.
 *
 * @throws RangeError  with what is wrong
 */
export function readJob(data: unknown): Job {
  const wrong = (what: string): never => {
    throw new RangeError(`a job of the queue is not as this engine writes it: ${what}`)
  }
  if (typeof data !== 'object' || data === null) return wrong('it is no record')
  const { mark, key, line, carriers, seed, from, to, want } = data as Record<keyof Job, unknown>
  if (typeof mark !== 'string' || mark.length > 100) return wrong('mark')
  if (typeof key !== 'string' || !DIGEST.test(key)) return wrong('key')
  if (typeof line !== 'string' || !DIGEST.test(line)) return wrong('line')
  if (typeof seed !== 'string' || seed.length > 10_000) return wrong('seed')
  if (want !== 'rows' && want !== 'results' && want !== 'passages') return wrong('want')
  if (!isCount(carriers) || !isCount(from) || !isCount(to) || from >= to || to - from > REPLICATIONS_MAX) return wrong('numbers')
  return { mark, key, line, carriers, seed, from, to, want }
}

const DIGEST = /^[0-9a-f]{64}$/
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0

/** The digest of a line's text. */
export const lineDigest = (text: string): string => createHash('sha256').update(text).digest('hex')

/** Where things lie on the server. */
export const PREFIX = 'loopwright'

/** One queue for each engine: a worker of another never sees what it may not answer. */
export const queueOf = (mark: string): string => `runs-${mark}`
export const lineKey = (digest: string): string => `${PREFIX}:line:${digest}`
export const resultKey = (mark: string, id: string): string => `${PREFIX}:result:${mark}:${id}`

/** holds another text each time that the jobs of an engine were taken back */
export const takenBackKey = (mark: string): string => `${PREFIX}:taken-back:${mark}`

/** seconds that lines and results stay where nobody fetches them */
export const KEPT_SECONDS = 7 * 24 * 3600
