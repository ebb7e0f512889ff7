/** Threads that load their code while the command still reads its scenario. */
import { availableParallelism } from 'node:os'
import type { ForcedEngine } from '@loopwright/study'
import { createPool, type Pool } from '@loopwright/study/machine'
import type { Shell } from './shell/shell.ts'

/** What the options say of threads, and those that run already. */
export interface ThreadFlags {
  readonly workers?: number
  readonly pool?: Pool
  readonly engine?: ForcedEngine
  /** however long it takes */
  readonly yes?: true
}

/** Fewer runs may be over before a thread has started, and then there is none. */
const RUNS_MIN = 50

/** More threads than this for each core only take memory. */
const PER_CORE = 4

/** No more threads than the machine can use; where more were asked for, standard error says so. */
export function fewEnough<F extends ThreadFlags>(shell: Pick<Shell, 'err'>, flags: F, cores: number = availableParallelism()): F {
  const { workers } = flags
  const most = PER_CORE * cores
  if (workers === undefined || workers <= most) return flags
  shell.err.write(`--workers ${workers}: ${most} are started, ${PER_CORE} for each core; more would only take memory\n`)
  return { ...flags, workers: most }
}

/**
 * Carries out a command with threads that are started first, and ended when it is done, whatever comes of it.
 *
 * @param flags  of the command
 * @param runs   how many there will be at least, as far as the words tell
 */
export async function withThreads<F extends ThreadFlags>(flags: F, runs: number, command: (flags: F) => Promise<number>): Promise<number> {
  if (runs < RUNS_MIN) return await command(flags)
  const pool = createPool(flags.workers)
  pool.start()
  try {
    return await command({ ...flags, pool })
  } finally {
    await pool.close()
  }
}

/** As options of a study. Threads that the command has started go before those of the shell. */
export const threadsOf = (
  { workers, pool, engine, yes }: ThreadFlags,
  shell: Pick<Shell, 'pool'>,
): Omit<ThreadFlags, 'yes'> & { readonly long?: true } => {
  const threads = pool ?? shell.pool
  return {
    ...(workers === undefined ? {} : { workers }),
    ...(threads === undefined ? {} : { pool: threads }),
    ...(engine === undefined ? {} : { engine }),
    ...(yes === true ? { long: true } : {}),
  }
}
