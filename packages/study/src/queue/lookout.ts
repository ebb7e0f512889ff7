/**
 * Looks every other second for what has got lost, whatever the queue says: words may get lost, jobs and answers may be gone after the server was restarted, a
 * clock that jumped may have put a job off for days; and somebody may have taken the jobs back.
 */
import type { Job as QueuedJob } from 'bullmq'
import type { Answers } from './answers.ts'
import type { Asking } from './asking.ts'
import { TakenBack } from './failure.ts'
import { takenBackKey } from './job.ts'
import type { Waiting } from './outstanding.ts'
import { type Seat, soon } from './seat.ts'

/** one look at what is outstanding: every so many milliseconds, at so many jobs */
const LOOK_MS = 1500
const LOOK_JOBS = 256
/** milliseconds that something odd must last before anything is done about it */
const ODD_MS = 1200
const DELAYED_MS = 15_000

/** Begins to look. */
export function keepLookout(seat: Seat, answers: Answers, asking: Asking): { readonly end: () => void } {
  const { redis, queue, mark, name, now, outstanding, takenBackBefore } = seat
  let looking = false
  const look = async (): Promise<void> => {
    if (looking || seat.closed || redis.status !== 'ready') return
    looking = true
    try {
      const lastTaken = await redis.get(takenBackKey(mark))
      if (lastTaken !== null && lastTaken !== takenBackBefore) {
        await giveUp()
        return
      }
      await answers.forget()
      const some = outstanding.some(LOOK_JOBS)
      if (some.length === 0) return
      const found = await answers.collect(some.map(({ id }) => id))
      await Promise.all(some.filter(({ id }) => !found.has(id)).map(lookAt))
    } catch {
      // the server is away; the next look finds out what came of it
    } finally {
      looking = false
    }
  }
  const giveUp = async (): Promise<void> => {
    seat.takenBack = true
    const left = outstanding.end()
    await soon(asking.withdraw(left))
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
      if (job?.failedReason !== undefined) answers.judge(id, job.failedReason)
    } else if (state === 'completed' || state === 'unknown') {
      // its answer may be on the way, so this has to last
      if (!lasts(ODD_MS)) return
      waiting.suspectMs = null
      if (state === 'completed') await queue.remove(id)
      asking.ask(waiting)
    } else if (state === 'delayed') {
      if (!lasts(DELAYED_MS)) return
      waiting.suspectMs = null
      await (await queue.getJob(id))?.promote()
    } else waiting.suspectMs = null
  }
  const timer = setInterval(() => void look(), LOOK_MS)
  return { end: () => clearInterval(timer) }
}
