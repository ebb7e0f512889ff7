/** A study that several machines share: each its part, or all by a queue. */
import { formatNumber } from '@loopwright/charts/table'
import { atQueue, queuePlace, saying } from './queuePlace.ts'
import { createPool, isOthersShare, partPool, type Share, type Store } from '@loopwright/study/machine'
import { STORE_FOLDER } from './keptRuns.ts'
import type { MachineFlags } from './machineFlags.ts'
import { DONE, Failure, INTERRUPTED, Misuse, refusals, type Shell } from './shell/shell.ts'
import { wrapText } from './shell/wrapText.ts'

/** Carries out a command whose runs are shared. */
export async function withMachines<F extends MachineFlags>(
  shell: Shell,
  flags: F,
  command: (flags: F) => Promise<number>,
): Promise<number> {
  const { part, queue, fresh, engine } = flags
  if (part !== undefined && queue !== undefined)
    throw new Misuse('--part needs no queue, and --queue shares by itself; leave out one of them')
  if (engine !== undefined)
    throw new Misuse(`--engine runs everything on this machine; leave out ${part === undefined ? '--queue' : '--part'}`)
  if (part !== undefined && fresh === true) throw new Misuse('--part keeps its runs in a store; leave out --fresh')
  return queue === undefined ? await withPart(shell, flags, part!, command) : await withQueue(shell, flags, queue, command)
}

/** Runs the study by the workers of a queue. */
async function withQueue<F extends MachineFlags>(
  shell: Shell,
  flags: F,
  queue: string,
  command: (flags: F) => Promise<number>,
): Promise<number> {
  const place = await queuePlace(shell, queue)
  return await atQueue(async ({ openQueuePool }) => {
    const pool = await openQueuePool(place, { say: saying(shell), now: shell.now, local: createPool(flags.workers) })
    // Ctrl-C takes back what nobody has begun, while the study still gathers what is in
    const stop = (): void => void pool.close()
    shell.signal.addEventListener('abort', stop, { once: true })
    try {
      return await command({ ...flags, pool })
    } finally {
      shell.signal.removeEventListener('abort', stop)
      await pool.close()
    }
  })
}

/** Runs one share. Where the study needs those of others it ends there, and says what comes next. */
async function withPart<F extends MachineFlags>(
  shell: Shell,
  flags: F,
  share: Share,
  command: (flags: F) => Promise<number>,
): Promise<number> {
  const threads = shell.pool ?? createPool(flags.workers)
  const pool = refusals(() => partPool(threads, share))
  let store: Store | null = null
  const kept = (): void => {
    const trouble = store?.report.trouble ?? null
    if (trouble !== null) throw new Failure(`the runs of share ${share.part} of ${share.of} are not kept: ${trouble}`)
  }
  try {
    const code = await command({
      ...flags,
      pool,
      onStore: (opened: Store | null) => {
        store = opened
      },
    })
    kept()
    return code
  } catch (error) {
    if (!isOthersShare(error)) throw error
    kept()
    const { run, left } = pool.report
    const folder = flags.store ?? STORE_FOLDER
    const told = [
      `share ${share.part} of ${share.of}: ${formatNumber(run, 0)} new replications are kept in ${folder}; ${formatNumber(left, 0)} are the share of others.`,
      'When all shares are done, put their stores together (loopwright store merge) and give the same command without --part: it takes what is there, and runs what is still missing.',
    ]
    shell.err.write(`${told.map((each) => wrapText(each, shell.err.columns)).join('\n')}\n`)
    return shell.signal.aborted ? INTERRUPTED : DONE
  } finally {
    if (shell.pool === undefined) await threads.close()
  }
}
