import type { LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { checkWorkers } from './asked.ts'
import { callingThread } from './callingThread.ts'
import { expectedEvents, needsFewEvents } from './expectedEvents.ts'
import { expectedMoves } from './expectedMoves.ts'
import { forcedPool } from './forcedPool.ts'
import { createPool, keptPool } from '#machine'
import type { Pool } from './pool.ts'
import type { Store } from '../store/store.ts'
import type { ForcedEngine } from './task.ts'

export interface PoolOptions {
  /** threads; 0: the calling one; default: one per core, and the calling one for a study that is known to be over before a thread has started. Changes no result. */
  readonly workers?: number
  /** threads that are there already; they are left running */
  readonly pool?: Pool
  /** where finished replications are kept and looked up; default: nowhere. Changes no result. */
  readonly store?: Store | null
  /** forces one of the two engines; then nothing comes from the store and nothing goes into it. Changes no result. */
  readonly engine?: ForcedEngine
  /** true: it may take more than an hour of a core; default: one that would is refused */
  readonly long?: boolean
}

/** How much a study will have to run, where that is known. */
export interface Work {
  readonly replications: number
  /** moves from zone to zone, in all */
  readonly moves: number
  /** events, in all, about */
  readonly events: number
}

/** Up to so many moves a study takes some 50 ms at most, less than threads take to load their code. */
const MOVES_SMALL = 50_000
/** and events: stops and arrivals may be many more than moves */
const EVENTS_SMALL = 10 * MOVES_SMALL

/**
 * The threads of a study, with its store in front.
 *
 * @param work  default: not known
 * @throws RangeError  if the work takes more than an hour of a core and `long` is not set
 */
export function openPool(options: PoolOptions, work: Work | null = null): { readonly pool: Pool; readonly close: () => Promise<void> } {
  const { workers, engine, store } = options
  checkWorkers(workers)
  if (work !== null && options.long !== true) needsFewEvents(work.events)
  const small = workers === undefined && work !== null && work.moves <= MOVES_SMALL && work.events <= EVENTS_SMALL
  const threads = options.pool ?? (small || workers === 0 ? callingThread() : createPool(workers, work?.replications))
  return {
    pool: engine !== undefined ? forcedPool(threads, engine) : store == null ? threads : keptPool(threads, store),
    close: async () => {
      if (options.pool === undefined) await threads.close()
    },
  }
}

/**
 * Refuses a study that decides as it goes, by the least that it will run.
 *
 * @throws RangeError  if that takes more than an hour of a core and `long` is not set
 */
export function refuseLong({ long }: PoolOptions, { events }: Work): void {
  if (long !== true) needsFewEvents(events, true)
}

/** The work of several lines, each with its own number of carriers. */
export function workOfLines(lines: readonly LineSpec[], replications: number): Work {
  const each = lines.map((line) => workOf(line, [{ carriers: line.carriers.count, replications }]))
  return {
    replications: lines.length * replications,
    moves: each.reduce((sum, { moves }) => sum + moves, 0),
    events: each.reduce((sum, { events }) => sum + events, 0),
  }
}

/** The work of replications of a line, by number of carriers. */
export function workOf(spec: LineSpec, parts: readonly { readonly carriers: number; readonly replications: number }[]): Work {
  const law = lawOrNull(spec)
  return {
    replications: parts.reduce((sum, part) => sum + part.replications, 0),
    moves: parts.reduce((sum, { carriers, replications }) => sum + replications * expectedMoves(spec, law, carriers), 0),
    events: parts.reduce((sum, { carriers, replications }) => sum + replications * expectedEvents(spec, law, carriers), 0),
  }
}
