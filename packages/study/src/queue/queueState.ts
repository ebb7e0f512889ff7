/** What is at a queue, and clearing it. */
import { randomUUID } from 'node:crypto'
import type { Queue } from 'bullmq'
import { KEPT_SECONDS, PREFIX, queueOf, takenBackKey } from './job.ts'
import { connect, type QueuePlace, type Server } from './redis.ts'
import { type Present, present } from './registry.ts'
import { workMark } from './workMark.ts'

/** Jobs of one engine. */
export interface QueueCounts {
  readonly mark: string
  /** the engine that runs now */
  readonly current: boolean
  readonly waiting: number
  readonly active: number
  readonly setAside: number
}

/** All that is at a queue. */
export interface QueueState {
  readonly name: string
  readonly present: readonly Present[]
  readonly queues: readonly QueueCounts[]
  /** jobs of this engine that ended those who tried them, or failed: name and why; a hundred at most */
  readonly setAside: readonly { readonly id: string; readonly why: string }[]
}

/** so many are told */
const SET_ASIDE_MAX = 100
const META = new RegExp(`^${PREFIX}:runs-(.*):meta$`)

/**
 * Looks at a queue: who is there, what waits, what is set aside.
 *
 * @throws NoQueue  where there is none
 * @example await queueState({ address: queueAddress('redis://127.0.0.1:1'), access: { user: null, password: null, authorities: null } }).catch((error) => error.name) // => 'NoQueue'
 */
export async function queueState(place: QueuePlace): Promise<QueueState> {
  return await withServer(place, async (server) => {
    const { redis, name } = server
    const mark = workMark()
    const marks = new Set<string>([mark])
    let cursor = '0'
    do {
      const [next, keys] = await redis.scan(cursor, 'MATCH', `${PREFIX}:runs-*:meta`, 'COUNT', 1000)
      cursor = next
      for (const key of keys) marks.add(META.exec(key)?.[1] ?? mark)
    } while (cursor !== '0')
    const queues: QueueCounts[] = []
    let setAside: { id: string; why: string }[] = []
    for (const each of [...marks].sort()) {
      await withJobs(server, each, async (queue) => {
        const counts = await queue.getJobCounts('wait', 'delayed', 'active', 'failed')
        const of = (name: string): number => counts[name] ?? 0
        queues.push({
          mark: each,
          current: each === mark,
          waiting: of('wait') + of('delayed'),
          active: of('active'),
          setAside: of('failed'),
        })
        if (each === mark)
          setAside = (await queue.getFailed(0, SET_ASIDE_MAX - 1)).flatMap((job) =>
            job === undefined ? [] : [{ id: String(job.id), why: String(job.failedReason) }],
          )
      })
    }
    return { name, present: await present(redis), queues, setAside }
  })
}

/**
 * Takes back all jobs of this engine that nobody has begun; gives how many there were. What is under way ends by itself; studies that wait are told, and end.
 *
 * @throws NoQueue  where there is none
 * @example await cancelQueue({ address: queueAddress('redis://127.0.0.1:1'), access: { user: null, password: null, authorities: null } }).catch((error) => error.name) // => 'NoQueue'
 */
export async function cancelQueue(place: QueuePlace): Promise<number> {
  return await withServer(place, (server) =>
    withJobs(server, workMark(), async (queue) => {
      const { wait = 0, delayed = 0 } = await queue.getJobCounts('wait', 'delayed')
      // before they go, or who waits for them would ask again
      await server.redis.set(takenBackKey(workMark()), randomUUID(), 'EX', KEPT_SECONDS)
      await queue.drain(true)
      return wait + delayed
    }),
  )
}

/**
 * Lets jobs that were set aside be tried again; gives how many there were.
 *
 * @throws NoQueue  where there is none
 * @example await retryQueue({ address: queueAddress('redis://127.0.0.1:1'), access: { user: null, password: null, authorities: null } }).catch((error) => error.name) // => 'NoQueue'
 */
export async function retryQueue(place: QueuePlace): Promise<number> {
  return await withServer(place, (server) =>
    withJobs(server, workMark(), async (queue) => {
      const { failed = 0 } = await queue.getJobCounts('failed')
      // forgotten, so that who still wants them asks anew, with all attempts
      await queue.clean(0, 0, 'failed')
      return failed
    }),
  )
}

/** Connects, and leaves the server whatever comes of it. */
async function withServer<T>(place: QueuePlace, use: (server: Server) => Promise<T>): Promise<T> {
  const server = await connect(place)
  try {
    return await use(server)
  } finally {
    server.redis.disconnect()
  }
}

/** The jobs of one engine, looked at without a trace of who looked. */
async function withJobs<T>({ bullmq, options }: Server, mark: string, use: (queue: Queue) => Promise<T>): Promise<T> {
  const queue = new bullmq.Queue(queueOf(mark), { connection: options, prefix: PREFIX, skipMetasUpdate: true })
  queue.on('error', () => {})
  try {
    return await use(queue)
  } finally {
    await queue.close()
  }
}
