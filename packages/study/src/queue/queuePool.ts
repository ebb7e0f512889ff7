/**
 * A pool whose threads are those of other machines. A task becomes a job of the queue, under a name that the same runs always have; its answer is fetched when the
 * queue says that it is there, and looked for whatever the queue says (`lookout.ts`). A study that ends without a word leaves its jobs to the workers, and finds
 * their answers when it is started again.
 */
import { randomUUID } from 'node:crypto'
import { callingThread } from '../runs/callingThread.ts'
import type { Pool } from '../runs/pool.ts'
import { perCarriers, perKey } from '../runs/remembered.ts'
import { type Kept, NOTHING, type TaskResult } from '../runs/task.ts'
import { readEntryFile } from '../store/entryFile.ts'
import { type Form, formOf } from '../store/forms.ts'
import { runKey } from '../store/runKey.ts'
import { takeAnswers } from './answers.ts'
import { askQueue } from './asking.ts'
import { ByteRoom } from './byteRoom.ts'
import { type Job, jobId, resultKey } from './job.ts'
import { answerBytes, jobChunk } from './jobChunk.ts'
import { keepLookout } from './lookout.ts'
import type { Waiting } from './outstanding.ts'
import type { QueuePlace } from './redis.ts'
import { announce, present } from './registry.ts'
import { leaveSeat, soon, takeSeat } from './seat.ts'
import { toldLines } from './toldLines.ts'
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

/**
 * Opens the queue for a study.
 *
 * @throws NoQueue  where there is none
 * @example await openQueuePool({ address: queueAddress('redis://127.0.0.1:1'), access: { user: null, password: null, authorities: null } }, { say: () => {}, now: () => 0 }).catch((error) => error.name) // => 'NoQueue'
 */
export async function openQueuePool(place: QueuePlace, { say, now, local = callingThread() }: QueuePoolOptions): Promise<Pool> {
  const mark = workMark()
  const seat = await takeSeat(place, { mark, say, now }).catch(async (error: unknown) => {
    await soon(local.close())
    throw error
  })
  const { redis, name, outstanding } = seat
  const lines = toldLines(redis)
  const answers = takeAnswers(seat)
  const asking = askQueue(seat, lines, answers)
  const lookout = keepLookout(seat, answers, asking)
  const watch = watchWorkers(() => present(redis), { mark, name, say, waits: () => outstanding.count > 0 })
  let asked = 0
  const leave = announce(redis, { kind: 'study', id: randomUUID(), threads: 0, jobs: 0, asked: 0 }, () => ({
    jobs: answers.count(),
    asked,
  }))
  const room = new ByteRoom(BYTES_AT_ONCE)
  /** Two lines of a study may be the same, and then their runs are. */
  const flying = new Map<string, Promise<Uint8Array>>()
  const fileOf = (job: Job): Promise<Uint8Array> => {
    const id = jobId(job)
    const before = flying.get(id)
    if (before !== undefined) return before
    const file = new Promise<Uint8Array>((resolve, reject) => {
      const waiting: Waiting = { id, job, resolve, reject, suspectMs: null }
      outstanding.add(waiting)
      asking.ask(waiting)
    }).finally(() => flying.delete(id))
    flying.set(id, file)
    return file
  }
  const known = perKey(({ line, carriers, seed, want }) => {
    const { spec } = lines.at(line)
    return { key: runKey(spec, carriers, seed, want), form: formOf(spec, want as Kept) }
  })
  return {
    size: 1,
    depth: JOBS_AT_ONCE,
    recalled: 0,
    line: lines.place,
    chunkOf: perCarriers(({ line, carriers }) => jobChunk(lines.at(line).spec, carriers)),
    start: () => {},
    async run(_, task) {
      const line = lines.at(task.line)
      if (task.want === 'traces') return await local.run(0, { ...task, line: local.line(line.spec) })
      const size = answerBytes(line.spec) * (task.to - task.from)
      await room.enter(size)
      if (seat.closed) return await new Promise(() => {})
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
      if (seat.closed) return
      seat.closed = true
      lookout.end()
      watch.end()
      const left = outstanding.end()
      await soon(Promise.all([asking.withdraw(left), answers.forget(), leave()]))
      await Promise.all([leaveSeat(seat), soon(local.close())])
    },
  }
}

/** The runs of an answer; null where it is damaged or another's. */
function itemsOf(file: Uint8Array, { key, from, to }: Job, form: Form<unknown>): unknown[] | null {
  const entry = readEntryFile(file, key)
  return entry === null || entry.from !== from || entry.to !== to ? null : form.itemsOf(entry.bytes, to - from)
}
