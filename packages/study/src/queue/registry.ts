/** Who takes part: workers and studies say every few seconds that they are there, and of which engine. */
import { hostname } from 'node:os'
import type { Redis } from 'ioredis'
import { PREFIX } from './job.ts'
import { machineWords, workMark } from './workMark.ts'

/** One that takes part. */
export interface Present {
  readonly kind: 'worker' | 'study'
  readonly id: string
  readonly mark: string
  /** such as `Node v20.20.2, linux x64` */
  readonly machine: string
  readonly host: string
  /** of a worker; of a study 0 */
  readonly threads: number
  /** jobs done, or of a study collected, so far */
  readonly jobs: number
  /** of a study: jobs asked for so far; of a worker 0 */
  readonly asked: number
}

/** milliseconds between two words, and until one that says nothing counts as gone */
const EVERY_MS = 3000
const GONE_MS = 12_000

const keyOf = ({ kind, id }: Pick<Present, 'kind' | 'id'>): string => `${PREFIX}:present:${kind}:${id}`

/** Says from now on that somebody is there, until the function that it gives is called. */
export function announce(
  redis: Redis,
  present: Omit<Present, 'mark' | 'machine' | 'host'>,
  now: () => Partial<Present>,
): () => Promise<void> {
  const told = { ...present, mark: workMark(), machine: machineWords(), host: hostname() }
  const say = (): void => {
    redis.set(keyOf(present), JSON.stringify({ ...told, ...now() }), 'PX', GONE_MS).catch(() => {})
  }
  say()
  const timer = setInterval(say, EVERY_MS)
  return async () => {
    clearInterval(timer)
    if (redis.status === 'ready') await redis.unlink(keyOf(present)).catch(() => {})
  }
}

/** All that are there now, by kind and host. */
export async function present(redis: Redis): Promise<Present[]> {
  const found: Present[] = []
  const keys: string[] = []
  let cursor = '0'
  do {
    const [next, some] = await redis.scan(cursor, 'MATCH', `${PREFIX}:present:*`, 'COUNT', 1000)
    cursor = next
    keys.push(...some)
  } while (cursor !== '0')
  if (keys.length === 0) return []
  for (const text of await redis.mget(...new Set(keys))) {
    const one = read(text)
    if (one !== null) found.push(one)
  }
  return found.sort((a, b) => (`${a.kind}${a.host}${a.id}` < `${b.kind}${b.host}${b.id}` ? -1 : 1))
}

function read(text: string | null): Present | null {
  try {
    const one = JSON.parse(text ?? 'null') as Present | null
    const right =
      one !== null &&
      (one.kind === 'worker' || one.kind === 'study') &&
      [one.id, one.mark, one.machine, one.host].every((each) => typeof each === 'string' && each.length < 200) &&
      [one.threads, one.jobs, one.asked].every(Number.isSafeInteger)
    return right ? one : null
  } catch {
    return null
  }
}
