/**
 * A pool that carries out one share of a study and leaves the others' alone: `--part 3/8`. Who has which runs depends on what they are and on nothing else, so that
 * machines which know nothing of each other share them without a gap.
 */
import type { LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { runKey } from '../store/runKey.ts'
import { expectedEvents } from '../runs/expectedEvents.ts'
import { OthersShare } from './othersShare.ts'
import type { Pool } from '../runs/pool.ts'
import { perCarriers, perKey } from '../runs/remembered.ts'

/** Which part of a study. */
export interface Share {
  /** 1 … of */
  readonly part: number
  readonly of: number
}

/** The pool, and what it has run and left. */
export interface PartPool extends Pool {
  /** replications */
  readonly report: { readonly run: number; readonly left: number }
}

/** events that make a share worth a task of its own: some milliseconds */
const EVENTS = 30_000
const CHUNK_MAX = 5
/** shares of a study wait for nobody, so all of them can be asked at once */
const TASKS_AT_ONCE = 256

/**
 * The pool, with all tasks refused that are another's share.
 *
 * @param pool  its threads; closing one closes the other
 * @throws RangeError  where there is no such share
 * @example partPool(callingThread(), { part: 3, of: 8 }).report // => { run: 0, left: 0 }
 */
export function partPool(pool: Pool, { part, of }: Share): PartPool {
  if (!Number.isInteger(of) || of < 1 || !Number.isInteger(part) || part < 1 || part > of)
    throw new RangeError(`a share is a whole number from 1 to the number of shares, not ${part} of ${of}`)
  const specs = new Map<number, LineSpec>()
  const report = { run: 0, left: 0 }
  const busy = Array.from({ length: pool.size }, () => 0)
  const waiting: (() => void)[] = []

  const chunkOf = perCarriers(({ line, carriers }) => {
    const spec = specs.get(line)!
    return Math.max(1, Math.min(CHUNK_MAX, Math.floor(EVENTS / expectedEvents(spec, lawOrNull(spec), carriers))))
  })
  /** Not all parts of a study begin with the same share: where each is short, the first share would have most. */
  const firstOf = perKey(
    ({ line, carriers, seed, want }) => Number.parseInt(runKey(specs.get(line)!, carriers, seed, want).slice(0, 8), 16) % of,
  )
  return {
    size: 1,
    depth: TASKS_AT_ONCE,
    recalled: 0,
    report,
    line(spec) {
      const line = pool.line(spec)
      specs.set(line, spec)
      return line
    },
    chunkOf,
    start: () => pool.start(),
    async run(_, task) {
      const owner = (Math.floor(task.from / chunkOf(task)) + firstOf(task)) % of
      if (owner !== part - 1) {
        report.left += task.to - task.from
        throw new OthersShare()
      }
      while (Math.min(...busy) >= pool.depth) await new Promise<void>((resolve) => waiting.push(resolve))
      const thread = busy.indexOf(Math.min(...busy))
      busy[thread]! += 1
      try {
        const result = await pool.run(thread, task)
        report.run += task.to - task.from
        return result
      } finally {
        busy[thread]! -= 1
        waiting.shift()?.()
      }
    },
    close: () => pool.close(),
  }
}
