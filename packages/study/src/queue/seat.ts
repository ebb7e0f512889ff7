/** What the parts of a study at a queue share: the connection, the jobs that are waited for, and whether it goes on. */
import type { Queue, QueueEvents } from 'bullmq'
import type { Redis } from 'ioredis'
import { PREFIX, queueOf, takenBackKey } from './job.ts'
import { Outstanding } from './outstanding.ts'
import { connect, type QueuePlace } from './redis.ts'

/** A study's seat at a queue. */
export interface Seat {
  readonly redis: Redis
  readonly queue: Queue
  readonly events: QueueEvents
  /** of the engine */
  readonly mark: string
  /** of the place */
  readonly name: string
  /** told what people should know while they wait */
  readonly say: (sentence: string) => void
  /** milliseconds of a clock that does not jump */
  readonly now: () => number
  readonly outstanding: Outstanding
  /** what stood on the server of jobs taken back when the study began */
  readonly takenBackBefore: string | null
  /** nothing is asked any more: the study is over */
  closed: boolean
  /** somebody took the jobs of this engine back */
  takenBack: boolean
}

const ATTEMPTS = 4

/**
 * Sits down at a queue.
 *
 * @throws NoQueue  where there is none
 */
export async function takeSeat(place: QueuePlace, { mark, say, now }: Pick<Seat, 'mark' | 'say' | 'now'>): Promise<Seat> {
  const { redis, options, bullmq, name } = await connect(place)
  const queue = new bullmq.Queue(queueOf(mark), {
    connection: options,
    prefix: PREFIX,
    defaultJobOptions: { attempts: ATTEMPTS, backoff: { type: 'exponential', delay: 500 }, removeOnComplete: true, removeOnFail: false },
  })
  const events = new bullmq.QueueEvents(queueOf(mark), { connection: options, prefix: PREFIX })
  queue.on('error', () => {})
  events.on('error', () => {})
  const takenBackBefore = await Promise.all([queue.waitUntilReady(), events.waitUntilReady()])
    .then(() => redis.get(takenBackKey(mark)))
    .catch(async (error: unknown) => {
      await leaveSeat({ redis, queue, events })
      throw error
    })
  const outstanding = new Outstanding()
  return { redis, queue, events, mark, name, say, now, outstanding, takenBackBefore, closed: false, takenBack: false }
}

/** Leaves it; what takes too long is left as it is. */
export async function leaveSeat({ redis, queue, events }: Pick<Seat, 'redis' | 'queue' | 'events'>): Promise<void> {
  await soon(Promise.all([queue.close(), events.close()]))
  redis.disconnect()
}

/** milliseconds that something may last at the end */
const LEAVE_MS = 700

/** What takes longer is left. */
export async function soon(work: Promise<unknown>): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined
  await Promise.race([work.catch(() => {}), new Promise((resolve) => (timer = setTimeout(resolve, LEAVE_MS)))])
  clearTimeout(timer)
}
