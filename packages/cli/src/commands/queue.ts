import { formatNumber, visibleLine } from '@loopwright/charts/table'
import { atQueue, queuePlace } from '../queuePlace.ts'
import { DONE, type Shell } from '../shell/shell.ts'

export interface QueueFlags {
  readonly queue: string
}

/** Who works, who asks, what waits, what is set aside. */
export async function queueInfo(shell: Shell, { queue }: QueueFlags): Promise<number> {
  const place = await queuePlace(shell, queue)
  const { name, present, queues, setAside } = await atQueue(async (door) => await door.queueState(place))
  const { out } = shell
  const say = (line: string): void => out.write(`${visibleLine(line)}\n`)
  const workers = present.filter(({ kind }) => kind === 'worker')
  if (workers.length === 0) say(`No worker is at ${name}.`)
  for (const { host, threads, jobs, mark, machine } of workers)
    say(`worker on ${host}: ${many(threads, 'thread')}, ${many(jobs, 'job')} done, engine ${mark} (${machine})`)
  for (const { host, jobs, asked, mark } of present.filter(({ kind }) => kind === 'study'))
    say(`study of ${host}: ${formatNumber(jobs, 0)} of ${formatNumber(asked, 0)} jobs asked for so far are in, engine ${mark}`)
  for (const { mark, current, waiting, active, setAside: aside } of queues)
    say(
      `jobs of engine ${mark}${current ? ' (this one)' : ''}: ${formatNumber(waiting, 0)} waiting, ${formatNumber(active, 0)} under way, ${formatNumber(aside, 0)} set aside`,
    )
  for (const { id, why } of setAside) say(`set aside: ${id}: ${why}`)
  return DONE
}

const many = (count: number, what: string): string => `${formatNumber(count, 0)} ${what}${count === 1 ? '' : 's'}`

/** Takes back what nobody has begun. */
export async function queueCancel(shell: Shell, { queue }: QueueFlags): Promise<number> {
  const place = await queuePlace(shell, queue)
  const count = await atQueue(async (door) => await door.cancelQueue(place))
  shell.out.write(`${formatNumber(count, 0)} waiting jobs are taken back; what is under way ends by itself.\n`)
  return DONE
}

/** Lets what was set aside be tried again. */
export async function queueRetry(shell: Shell, { queue }: QueueFlags): Promise<number> {
  const place = await queuePlace(shell, queue)
  const count = await atQueue(async (door) => await door.retryQueue(place))
  shell.out.write(`${formatNumber(count, 0)} jobs may be tried again, when their study asks for them.\n`)
  return DONE
}
