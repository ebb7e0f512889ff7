/**
 * A worker of a queue: takes jobs of its own engine, simulates them on threads, so that the locks of the jobs are renewed meanwhile, and leaves the answers on the
 * server. A job whose worker or thread ended before it was done is tried again in a process by itself, so that one which ends processes ends no other job with it.
 */
import { randomUUID } from 'node:crypto'
import { hostname } from 'node:os'
import type { Job as QueuedJob, Worker } from 'bullmq'
import type { LineSpec } from '@loopwright/line'
import type { Kept, Task, TaskResult } from '../runs/task.ts'
import { ThreadEnd } from '../runs/threadEnd.ts'
import { entryFile } from '../store/entryFile.ts'
import { type Form, formOf } from '../store/forms.ts'
import { runKey } from '../store/runKey.ts'
import { alone } from './alone.ts'
import { failureText } from './failure.ts'
import { type Job, jobId, KEPT_SECONDS, lineDigest, lineKey, PREFIX, queueOf, readJob, resultKey } from './job.ts'
import { readLineText } from './lineText.ts'
import { connect, patiently, type QueuePlace } from './redis.ts'
import { announce, present } from './registry.ts'
import { threadSlots } from './threadSlots.ts'
import { whyRefused, workMark } from './workMark.ts'

/** How a worker works. */
export interface QueueWorkerOptions {
  /** count, ≥ 1 */
  readonly threads: number
  /** ends the worker: jobs under way are finished, no other is taken */
  readonly signal: AbortSignal
  readonly say: (sentence: string) => void
  /** milliseconds of a clock that does not jump */
  readonly now: () => number
  /** ends the worker when it had nothing to do for so long, seconds; null: never */
  readonly idleSeconds: number | null
}

/** What a worker has done. */
export interface WorkDone {
  readonly jobs: number
  readonly replications: number
  /** jobs that could not be done here */
  readonly failed: number
}

/** milliseconds that a job is its worker's without a word from it; and between two looks for jobs without a worker */
const LOCK_MS = 5000
const STALLED_MS = 2500
/** seconds of one wait for a job */
const DRAIN_SECONDS = 2
/** lines kept ready */
const LINES_MAX = 64

interface Ready {
  readonly spec: LineSpec
  /** what it was asked for so far: key and form by number of carriers, seed and name of the form */
  readonly runs: Map<string, { readonly key: string; readonly form: Form<unknown> }>
}

/**
 * Works until it is told to end, or has had nothing to do for as long as it was told.
 *
 * @throws NoQueue  where there is no queue
 * @example await workAtQueue({ address: queueAddress('redis://127.0.0.1:1'), access: { user: null, password: null, authorities: null } }, { threads: 1, signal: new AbortController().signal, say: () => {}, now: () => 0, idleSeconds: 1 }).catch((error) => error.name) // => 'NoQueue'
 */
export async function workAtQueue(place: QueuePlace, { threads, signal, say, now, idleSeconds }: QueueWorkerOptions): Promise<WorkDone> {
  const { redis, options, bullmq, name } = await connect(place)
  const mark = workMark()
  const slots = threadSlots(threads)
  const apart = alone()
  const lines = new Map<string, Ready>()
  const done = { jobs: 0, replications: 0, failed: 0 }
  let busy = 0
  let idleSince = now()
  let ending = false
  const stopping = (): boolean => ending

  const lineOf = async (digest: string): Promise<Ready> => {
    const before = lines.get(digest)
    if (before !== undefined) return before
    const text = await redis.get(lineKey(digest))
    if (text === null) throw new Error('the line of the job is not at the server any more')
    if (lineDigest(text) !== digest) throw new Error('the line of the job was changed on its way')
    const spec = readLineText(text)
    const ready: Ready = { spec, runs: new Map() }
    lines.set(digest, ready)
    if (lines.size > LINES_MAX) lines.delete(lines.keys().next().value!)
    return ready
  }
  const simulate = async (spec: LineSpec, job: Job, careful: boolean): Promise<Pick<TaskResult, Kept>> => {
    const { carriers, seed, from, to, want } = job
    const task: Omit<Task, 'line'> = { carriers, seed, from, to, want }
    if (careful) return await apart.run(spec, { ...task, line: 0 })
    try {
      return await slots.run(spec, task)
    } catch (error) {
      if (!(error instanceof ThreadEnd) || ending) throw error
      return await apart.run(spec, { ...task, line: 0 })
    }
  }
  const perform = async (queued: QueuedJob): Promise<number> => {
    const job = readJob(queued.data)
    if (job.mark !== mark) throw new RangeError(`the job is for engine ${job.mark}; this one is ${mark}`)
    const id = jobId(job)
    if (id !== queued.id) throw new RangeError('the job has another name than its runs')
    const again = queued.attemptsStarted > 1
    if (again && (await redis.exists(resultKey(mark, id))) === 1) return 0
    const { spec, runs } = await lineOf(job.line)
    const place = JSON.stringify([job.carriers, job.seed, job.want])
    const asked = runs.get(place) ?? { key: runKey(spec, job.carriers, job.seed, job.want), form: formOf(spec, job.want) }
    runs.set(place, asked)
    const { key, form } = asked
    if (key !== job.key) throw new RangeError('the job names other runs than its line has')
    const result = await simulate(spec, job, queued.stalledCounter > 0)
    const bytes = form.bytesOf(result[job.want])
    const file = Buffer.from(entryFile(key, { from: job.from, to: job.to, bytes }))
    await patiently(() => redis.set(resultKey(mark, id), file, 'EX', KEPT_SECONDS), stopping, say)
    done.jobs += 1
    done.replications += job.to - job.from
    return 1
  }
  const worker: Worker = new bullmq.Worker(
    queueOf(mark),
    async (queued) => {
      busy += 1
      try {
        return await perform(queued)
      } catch (error) {
        done.failed += 1
        if (isOwn(error)) throw new bullmq.UnrecoverableError(failureText(error))
        throw error
      } finally {
        busy -= 1
        idleSince = now()
      }
    },
    {
      connection: options,
      prefix: PREFIX,
      concurrency: slots.depth,
      lockDuration: LOCK_MS,
      stalledInterval: STALLED_MS,
      // a job that was cut off is tried by itself from then on, and fails by itself where it is the cause
      maxStalledCount: 1000,
      drainDelay: DRAIN_SECONDS,
      runRetryDelay: 1000,
      name: hostname(),
    },
  )
  worker.on('error', () => {})
  const leave = announce(redis, { kind: 'worker', id: randomUUID(), threads, jobs: 0, asked: 0 }, () => ({ jobs: done.jobs }))
  say(`${threads === 1 ? '1 thread works' : `${threads} threads work`} for ${name}, engine ${mark}`)
  const refusals = watchStudies(async () => await present(redis), mark, say)
  let absent = false
  redis.on('close', () => {
    if (!absent && !ending) say(`${name} does not answer; the worker waits for it`)
    absent = true
  })
  redis.on('ready', () => {
    if (absent) say(`${name} answers again`)
    absent = false
    idleSince = now()
  })
  await new Promise<void>((resolve) => {
    const look = setInterval(() => {
      const idle = idleSeconds !== null && busy === 0 && !absent && now() - idleSince > 1000 * idleSeconds
      if (!signal.aborted && !idle) return
      clearInterval(look)
      resolve()
    }, 50)
  })
  ending = true
  if (busy > 0) say(`ending, after ${busy === 1 ? '1 job' : `${busy} jobs`} under way`)
  refusals.end()
  await worker.close(redis.status !== 'ready')
  apart.close()
  await Promise.all([slots.close(), leave()])
  redis.disconnect()
  return done
}

/** What the run itself threw, and would throw anywhere. */
const isOwn = (error: unknown): error is Error =>
  error instanceof Error && (error.name === 'RangeError' || error.name === 'AssertionError' || error.name === 'StatisticsError')

/** milliseconds between two looks at who asks */
const WATCH_MS = 5000

/** Says once of each other engine that asks here why nothing is done for it. */
function watchStudies(
  look: () => Promise<Awaited<ReturnType<typeof present>>>,
  mark: string,
  say: (sentence: string) => void,
): { readonly end: () => void } {
  const told = new Set<string>()
  const again = async (): Promise<void> => {
    const all = await look().catch(() => [])
    for (const one of all) {
      const why = whyRefused(mark, one.mark)
      if (one.kind !== 'study' || why === null || told.has(one.mark)) continue
      told.add(one.mark)
      say(`refused: a study of ${one.host} (${one.machine}) wants engine ${one.mark}, and this one is ${mark}: ${why}`)
    }
  }
  void again()
  const timer = setInterval(() => void again(), WATCH_MS)
  return { end: () => clearInterval(timer) }
}
