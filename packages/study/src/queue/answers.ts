/** What workers answered: fetched when the queue says that it is there, and taken away when the study has it. */
import { resultKey } from './job.ts'
import { SetAside, setAsideWords, thrownFailure } from './failure.ts'
import type { Seat } from './seat.ts'

/** The answers to a study. */
export interface Answers {
  /** fetches answers that are there; gives the names of those that were */
  readonly collect: (ids: readonly string[]) => Promise<Set<string>>
  /** a job that failed, by why */
  readonly judge: (id: string, reason: string) => void
  /** takes away what the study has had: it is kept elsewhere */
  readonly forget: () => Promise<void>
  /** how many came */
  readonly count: () => number
}

/** answers that are fetched or taken away at once */
const BATCH = 64

/** Takes in what comes of the jobs that are waited for. */
export function takeAnswers({ redis, events, mark, outstanding }: Pick<Seat, 'redis' | 'events' | 'mark' | 'outstanding'>): Answers {
  let had: string[] = []
  let done: string[] = []
  let count = 0
  const collect = async (ids: readonly string[]): Promise<Set<string>> => {
    const found = new Set<string>()
    const files = await redis.mgetBuffer(...ids.map((id) => resultKey(mark, id)))
    for (const [index, file] of files.entries()) {
      const id = ids[index]!
      if (file === null || outstanding.get(id) === undefined) continue
      found.add(id)
      outstanding.answer(id, file)
      had.push(id)
      count += 1
    }
    return found
  }
  const fetchDone = (): void => {
    const ids = done
    done = []
    for (const some of inBatches(ids)) collect(some).catch(() => {})
  }
  const judge = (id: string, reason: string): void => {
    const waiting = outstanding.get(id)
    if (waiting === undefined) return
    const thrown = thrownFailure(reason)
    if (thrown !== null) outstanding.fail(id, thrown)
    else outstanding.setAside(id, new SetAside(setAsideWords(waiting.job, reason)))
  }
  events.on('completed', ({ jobId: id }) => {
    if (outstanding.get(id) === undefined) return
    done.push(id)
    if (done.length === 1) setImmediate(fetchDone)
  })
  events.on('failed', ({ jobId: id, failedReason }) => judge(id, failedReason))
  return {
    collect,
    judge,
    async forget() {
      const ids = had
      had = []
      for (const some of inBatches(ids)) await redis.unlink(...some.map((id) => resultKey(mark, id))).catch(() => {})
    },
    count: () => count,
  }
}

/** In pieces that a server takes at once. */
export function inBatches<T>(all: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(all.length / BATCH) }, (_, k) => all.slice(k * BATCH, (k + 1) * BATCH))
}
