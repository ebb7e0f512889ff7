/** Jobs put into the queue, many at once; one whose answer is there already is not put. */
import { type Answers, inBatches } from './answers.ts'
import { asError } from './failure.ts'
import type { Waiting } from './outstanding.ts'
import { patiently } from './redis.ts'
import type { Seat } from './seat.ts'
import type { ToldLines } from './toldLines.ts'

/** What a study asks of a queue. */
export interface Asking {
  /** asks together with all that are asked at this moment */
  readonly ask: (waiting: Waiting) => void
  /** takes jobs out that nobody has begun */
  readonly withdraw: (all: readonly Waiting[]) => Promise<unknown>
}

/** Asks for what is waited for. */
export function askQueue(seat: Seat, lines: ToldLines, answers: Answers): Asking {
  const { queue, outstanding, say } = seat
  const unasked: Waiting[] = []
  const withdraw = (all: readonly Waiting[]) => Promise.all(all.map(({ id }) => queue.remove(id).catch(() => 0)))
  const askFor = async (some: readonly Waiting[]): Promise<void> => {
    await lines.tellFor(some.map(({ job }) => job))
    const before = await answers.collect(some.map(({ id }) => id))
    const missing = some.filter(({ id }) => !before.has(id) && outstanding.get(id) !== undefined)
    if (missing.length > 0) await queue.addBulk(missing.map(({ id, job }) => ({ name: 'runs', data: job, opts: { jobId: id } })))
    // given up while they were on their way
    if (seat.closed || seat.takenBack) await withdraw(missing)
  }
  const askAll = async (all: readonly Waiting[]): Promise<void> => {
    for (const some of inBatches(all)) {
      try {
        await patiently(
          () => askFor(some),
          () => seat.closed,
          say,
        )
      } catch (error) {
        if (!seat.closed) for (const { id } of some) outstanding.fail(id, asError(error))
      }
    }
  }
  return {
    ask(waiting) {
      unasked.push(waiting)
      if (unasked.length === 1) setImmediate(() => void askAll(unasked.splice(0)))
    },
    withdraw,
  }
}
