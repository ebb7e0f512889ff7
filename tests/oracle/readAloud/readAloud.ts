/**
 * The line model a second time, for tests only: slow and plain, MODEL.md read aloud.
 * It shares no code with the engine; only the types of what goes in and what comes out.
 */
import type { LineSpec, RunEnd, RunResult } from '@loopwright/line'
import { bookUntil, closeBooks, openBooks } from './bookkeeping.ts'
import { endOne } from './ends.ts'
import type { LogEntry } from './eventLog.ts'
import { standstill } from './standstill.ts'
import { brakeAll, startOne } from './starts.ts'
import { turnOneStop } from './stops.ts'
import { leastLeft, letTimePass, thingsUnderWay } from './underWay.ts'
import type { World } from './world.ts'
import { worldAtStart } from './worldAtStart.ts'

export interface ReadAloud {
  readonly result: RunResult
  readonly log: readonly LogEntry[]
}

/** Far more than any instant of a sensible line needs. */
const STEPS_AN_INSTANT_MAX = 100_000

/** MODEL.md §1, "Within one instant, in this order" */
function liveThroughInstant(w: World): void {
  let steps = 0
  const count = (): void => {
    steps += 1
    if (steps > STEPS_AN_INSTANT_MAX) throw new Error(`the instant at ${w.t} s does not come to an end`)
  }
  for (;;) {
    count()
    // 1. Stops that end now end, stops that begin now begin. One that a start of this instant brings about begins before anything else starts.
    if (turnOneStop(w)) continue
    // 2. Everything that ends now ends.
    if (endOne(w)) continue
    // 3. Starts, one at a time, "and after each start (and what it ends in zero time, by 2) again from the beginning".
    if (startOne(w)) continue
    // 4. "Only when nothing more can start", those who could not pass begin to brake.
    if (brakeAll(w)) continue
    return
  }
}

/** One run, replication from 0. */
export function readAloud(spec: LineSpec, seed: string, replication: number): ReadAloud {
  const w = worldAtStart(spec, seed, replication)
  const books = openBooks(w)
  let end: RunEnd = { reason: 'end of window', atSeconds: null, waits: [], cycle: [], unmanned: [] }
  for (;;) {
    liveThroughInstant(w)
    const still = standstill(w)
    if (still !== null) {
      end = still
      bookUntil(books, w, books.end) // "The states of that instant count for the rest of the window"
      break
    }
    const things = thingsUnderWay(w)
    const seconds = leastLeft(things)
    bookUntil(books, w, w.t + seconds)
    if (w.t + seconds > books.end) break
    letTimePass(w, things, seconds)
  }
  w.log.push({ t: end.atSeconds ?? books.end, what: 'ended', reason: end.reason })
  return { result: closeBooks(books, w, seed, replication, end), log: w.log }
}
