import { availableParallelism } from 'node:os'
import { formatNumber } from '@loopwright/charts/table'
import { atQueue, queuePlace, saying } from '../queuePlace.ts'
import { DONE, INTERRUPTED, type Shell } from '../shell/shell.ts'
import { fewEnough } from '../threads.ts'

export interface WorkFlags {
  readonly queue: string
  readonly workers?: number
  /** seconds */
  readonly idle?: number
}

/** Runs what studies ask for at a queue. */
export async function work(shell: Shell, flags: WorkFlags): Promise<number> {
  const { workers = availableParallelism(), idle } = fewEnough(shell, flags)
  const place = await queuePlace(shell, flags.queue)
  const { jobs, replications, failed } = await atQueue(({ workAtQueue }) =>
    workAtQueue(place, { threads: workers, signal: shell.signal, say: saying(shell), now: shell.now, idleSeconds: idle ?? null }),
  )
  const failures = failed === 0 ? '' : `; ${formatNumber(failed, 0)} attempts failed`
  shell.out.write(`${formatNumber(replications, 0)} replications in ${formatNumber(jobs, 0)} jobs${failures}.\n`)
  return shell.signal.aborted ? INTERRUPTED : DONE
}
