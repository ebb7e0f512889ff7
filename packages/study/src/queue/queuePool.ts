/**
 * A pool whose threads are those of other machines. A task becomes a job of the queue, under a name that the same runs always have; its answer is fetched when the
 * queue says that it is there, and looked for every other second whatever the queue says: words may get lost, jobs and answers may be gone after the server was
 * restarted, and then they are asked for again. A study that ends without a word leaves its jobs to the workers, and finds their answers when it is started again.
 */
import { randomUUID } from 'node:crypto'
import type { Job as QueuedJob } from 'bullmq'
import type { LineSpec } from '@loopwright/line'
import { callingThread } from '../runs/callingThread.ts'
import type { Pool } from '../runs/pool.ts'
import { perCarriers, perKey } from '../runs/remembered.ts'
import { type Kept, NOTHING, type TaskResult } from '../runs/task.ts'
import { readEntryFile } from '../store/entryFile.ts'
import { type Form, formOf } from '../store/forms.ts'
import { runKey } from '../store/runKey.ts'
import { ByteRoom } from './byteRoom.ts'
import { asError, SetAside, setAsideWords, TakenBack, thrownFailure } from './failure.ts'
import { type Job, jobId, KEPT_SECONDS, lineDigest, lineKey, PREFIX, queueOf, resultKey, takenBackKey } from './job.ts'
import { answerBytes, jobChunk } from './jobChunk.ts'
import { lineText } from './lineText.ts'
import { Outstanding, type Waiting } from './outstanding.ts'
import { connect, patiently, type QueuePlace } from './redis.ts'
import { announce, present } from './registry.ts'
import { watchWorkers } from './watchWorkers.ts'
import { workMark } from './workMark.ts'

/** What a study by a queue needs beside its place. */
export interface QueuePoolOptions {
  /** told what people should know while they wait: who takes part, who cannot */
  readonly say: (sentence: string) => void
  /** milliseconds of a clock that does not jump */
  readonly now: () => number
  /** for runs whose every event is wanted, which do not travel; default: the calling thread */
  readonly local?: Pool
}

/** jobs that a study has in the queue at most: what workers go on with when it is gone */
const JOBS_AT_ONCE = 4096
/** bytes of the answers to these, at most */
const BYTES_AT_ONCE = 256_000_000
/** one look at what is outstanding: every so many milliseconds, at so many jobs */
const LOOK_MS = 1500
const LOOK_JOBS = 256
/** milliseconds that something odd must last before anything is done about it */
const ODD_MS = 1200
const DELAYED_MS = 15_000
/** milliseconds that taking jobs back may last at the end */
const LEAVE_MS = 700
const ATTEMPTS = 4
const BATCH = 64

interface Known {
  readonly spec: LineSpec
  readonly text: string
  readonly digest: string
  told: boolean
}

/**
 * Opens the queue for a study.
 *
 * @throws NoQueue  where there is none
 * @example await openQueuePool({ address: queueAddress('redis://127.0.0.1:1'), access: { user: null, password: null, authorities: null } }, { say: () => {}, now: () => 0 }).catch((error) => error.name) // => 'NoQueue'
 */
export async function openQueuePool(place: QueuePlace, { say, now, local = callingThread() }: QueuePoolOptions): Promise<Pool> {
  const { redis, options, bullmq, name } = await connect(place)
  const mark = workMark()
  const queue = new bullmq.Queue(queueOf(mark), {
    connection: options,
    prefix: PREFIX,
    defaultJobOptions: { attempts: ATTEMPTS, backoff: { type: 'exponential', delay: 500 }, removeOnComplete: true, removeOnFail: false },
  })
  const events = new bullmq.QueueEvents(queueOf(mark), { connection: options, prefix: PREFIX })
  queue.on('error', () => {})
  events.on('error', () => {})
  const lines: Known[] = []
  const outstanding = new Outstanding()
  /** answers that the study has had: taken away at the next look, when they are kept elsewhere */
  let had: string[] = []
  let closed = false
  let takenBack = false
  let asked = 0
  let collected = 0
  const room = new ByteRoom(BYTES_AT_ONCE)
  const ended = (): boolean => closed
  const leaveServer = async (): Promise<void> => {
    await soon(Promise.all([queue.close(), events.close(), local.close()]))
    redis.disconnect()
  }
  const takenBackBefore = await Promise.all([queue.waitUntilReady(), events.waitUntilReady()])
    .then(() => redis.get(takenBackKey(mark)))
    .catch(async (error: unknown) => {
      await leaveServer()
      throw error
    })

  // — what is asked
  const unasked: Waiting[] = []
  const askLater = (waiting: Waiting): void => {
    unasked.push(waiting)
    if (unasked.length === 1) setImmediate(() => void ask(unasked.splice(0)))
  }
  const ask = async (all: Waiting[]): Promise<void> => {
    for (let at = 0; at < all.length; at += BATCH) {
      const some = all.slice(at, at + BATCH)
      try {
        await patiently(() => askFor(some), ended, say)
      } catch (error) {
        if (!closed) for (const { id } of some) outstanding.fail(id, asError(error))
      }
    }
  }
  const askFor = async (some: readonly Waiting[]): Promise<void> => {
    for (const line of lines) if (!line.told && some.some(({ job }) => job.line === line.digest)) await tellLine(line)
    const before = await collect(some.map(({ id }) => id))
    const missing = some.filter(({ id }) => !before.has(id) && outstanding.get(id) !== undefined)
    if (missing.length > 0) await queue.addBulk(missing.map(({ id, job }) => ({ name: 'runs', data: job, opts: { jobId: id } })))
    // given up while they were on their way
    if (closed || takenBack) await withdraw(missing)
  }
  const withdraw = (all: readonly Waiting[]) => Promise.all(all.map(({ id }) => queue.remove(id).catch(() => 0)))
  const tellLine = async (line: Known): Promise<void> => {
    await redis.set(lineKey(line.digest), line.text, 'EX', KEPT_SECONDS)
    line.told = true
  }
  redis.on('ready', () => {
    for (const line of lines) line.told = false
  })

  // — what is answered
  /** Fetches answers that are there; gives the names of those that were. */
  const collect = async (ids: readonly string[]): Promise<Set<string>> => {
    const found = new Set<string>()
    const files = await redis.mgetBuffer(...ids.map((id) => resultKey(mark, id)))
    for (const [index, file] of files.entries()) {
      const id = ids[index]!
      if (file === null || outstanding.get(id) === undefined) continue
      found.add(id)
      outstanding.answer(id, file)
      had.push(id)
      collected += 1
    }
    return found
  }
  let done: string[] = []
  events.on('completed', ({ jobId: id }) => {
    if (outstanding.get(id) === undefined) return
    done.push(id)
    if (done.length === 1) setImmediate(fetchDone)
  })
  const fetchDone = (): void => {
    const ids = done
    done = []
    for (let at = 0; at < ids.length; at += BATCH) collect(ids.slice(at, at + BATCH)).catch(() => {})
  }
  events.on('failed', ({ jobId: id, failedReason }) => judge(id, failedReason))
  const judge = (id: string, reason: string): void => {
    const waiting = outstanding.get(id)
    if (waiting === undefined) return
    const thrown = thrownFailure(reason)
    if (thrown !== null) outstanding.fail(id, thrown)
    else outstanding.setAside(id, new SetAside(setAsideWords(waiting.job, reason)))
  }

  // — what has got lost
  let looking = false
  const look = async (): Promise<void> => {
    if (looking || closed || redis.status !== 'ready') return
    looking = true
    try {
      const lastTaken = await redis.get(takenBackKey(mark))
      if (lastTaken !== null && lastTaken !== takenBackBefore) {
        await giveUp()
        return
      }
      await forget()
      const some = outstanding.some(LOOK_JOBS)
      if (some.length === 0) return
      const found = await collect(some.map(({ id }) => id))
      await Promise.all(some.filter(({ id }) => !found.has(id)).map(lookAt))
    } catch {
      // the server is away; the next look finds out what came of it
    } finally {
      looking = false
    }
  }
  const giveUp = async (): Promise<void> => {
    takenBack = true
    const left = outstanding.end()
    await soon(withdraw(left))
    for (const { reject } of left) reject(new TakenBack(`the jobs of this study were taken back (loopwright queue cancel, at ${name})`))
  }
  const lookAt = async (waiting: Waiting): Promise<void> => {
    const { id } = waiting
    const state = await queue.getJobState(id)
    const lasts = (ms: number): boolean => {
      waiting.suspectMs ??= now()
      return now() - waiting.suspectMs >= ms
    }
    if (state === 'failed') {
      const job = (await queue.getJob(id)) as QueuedJob | undefined
      if (job?.failedReason !== undefined) judge(id, job.failedReason)
    } else if (state === 'completed' || state === 'unknown') {
      // its answer may be on the way, so this has to last
      if (!lasts(ODD_MS)) return
      waiting.suspectMs = null
      if (state === 'completed') await queue.remove(id)
      askLater(waiting)
    } else if (state === 'delayed') {
      // a clock that jumped may have put it off for days
      if (!lasts(DELAYED_MS)) return
      waiting.suspectMs = null
      await (await queue.getJob(id))?.promote()
    } else waiting.suspectMs = null
  }
  const forget = async (): Promise<void> => {
    const ids = had
    had = []
    for (let at = 0; at < ids.length; at += BATCH)
      await redis.unlink(...ids.slice(at, at + BATCH).map((id) => resultKey(mark, id))).catch(() => {})
  }
  const timer = setInterval(() => void look(), LOOK_MS)
  const watch = watchWorkers(() => present(redis), { mark, name, say, waits: () => outstanding.count > 0 })
  const leave = announce(redis, { kind: 'study', id: randomUUID(), threads: 0, jobs: 0, asked: 0 }, () => ({ jobs: collected, asked }))

  /** Two lines of a study may be the same, and then their runs are. */
  const flying = new Map<string, Promise<Uint8Array>>()
  const fileOf = (job: Job): Promise<Uint8Array> => {
    const id = jobId(job)
    const before = flying.get(id)
    if (before !== undefined) return before
    const file = new Promise<Uint8Array>((resolve, reject) => {
      const waiting: Waiting = { id, job, resolve, reject, suspectMs: null }
      outstanding.add(waiting)
      askLater(waiting)
    }).finally(() => flying.delete(id))
    flying.set(id, file)
    return file
  }
  const known = perKey(({ line, carriers, seed, want }) => {
    const { spec } = lines[line]!
    return { key: runKey(spec, carriers, seed, want), form: formOf(spec, want as Kept) }
  })
  return {
    size: 1,
    depth: JOBS_AT_ONCE,
    recalled: 0,
    line(spec) {
      const before = lines.findIndex((line) => line.spec === spec)
      if (before >= 0) return before
      const text = lineText(spec)
      return lines.push({ spec, text, digest: lineDigest(text), told: false }) - 1
    },
    chunkOf: perCarriers(({ line, carriers }) => jobChunk(lines[line]!.spec, carriers)),
    start: () => {},
    async run(_, task) {
      const line = lines[task.line]!
      if (task.want === 'traces') return await local.run(0, { ...task, line: local.line(line.spec) })
      const size = answerBytes(line.spec) * (task.to - task.from)
      await room.enter(size)
      if (closed) return await new Promise(() => {})
      const { key, form } = known(task)
      const { carriers, seed, from, to, want } = task
      const job: Job = { mark, key, line: line.digest, carriers, seed, from, to, want }
      asked += 1
      try {
        for (;;) {
          const file = await fileOf(job)
          const items = itemsOf(file, job, form)
          if (items !== null) return { ...NOTHING, [want]: items } as TaskResult
          await redis.unlink(resultKey(mark, jobId(job)))
        }
      } finally {
        room.leave(size)
      }
    },
    async close() {
      if (closed) return
      closed = true
      clearInterval(timer)
      watch.end()
      const left = outstanding.end()
      await soon(Promise.all([withdraw(left), forget(), leave()]))
      await leaveServer()
    },
  }
}

/** The runs of an answer; null where it is damaged or another's. */
function itemsOf(file: Uint8Array, { key, from, to }: Job, form: Form<unknown>): unknown[] | null {
  const entry = readEntryFile(file, key)
  return entry === null || entry.from !== from || entry.to !== to ? null : form.itemsOf(entry.bytes, to - from)
}

/** What takes longer is left. */
const soon = async (work: Promise<unknown>): Promise<void> => {
  let timer: ReturnType<typeof setTimeout> | undefined
  await Promise.race([work.catch(() => {}), new Promise((resolve) => (timer = setTimeout(resolve, LEAVE_MS)))])
  clearTimeout(timer)
}
