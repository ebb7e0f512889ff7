/** Where a queue is, by its address and the environment. */
import { QUEUE_ENVIRONMENT, queueAddress, type QueuePlace } from '@loopwright/study/queue'
import { renewedLine } from './shell/renewedLine.ts'
import { Failure, Misuse, refusals, type Shell } from './shell/shell.ts'

/** @throws Misuse  where the address is none, or a file of the environment cannot be read */
export async function queuePlace(shell: Shell, text: string): Promise<QueuePlace> {
  const address = refusals(() => queueAddress(text))
  const of = (name: string): string | null => {
    const value = shell.environment(name)
    return value === undefined || value === '' ? null : value
  }
  const file = of(QUEUE_ENVIRONMENT.authorities)
  if (file !== null && !address.encrypted)
    throw new Misuse(
      `${QUEUE_ENVIRONMENT.authorities} is set, but the way to the queue is not encrypted: write rediss:// in place of redis://`,
    )
  const authorities = file === null ? null : await shell.readFile(file)
  return { address, access: { user: of(QUEUE_ENVIRONMENT.user), password: of(QUEUE_ENVIRONMENT.password), authorities } }
}

/** no defects: no queue, jobs that were set aside, a study that was taken back */
const TOLD = ['NoQueue', 'SetAside', 'TakenBack']

/** Does something at a queue: what goes wrong there is told without a stack. */
export async function atQueue<T>(what: (queue: typeof import('@loopwright/study/queue')) => Promise<T>): Promise<T> {
  try {
    return await what(await import('@loopwright/study/queue'))
  } catch (error) {
    if (error instanceof Error && TOLD.includes(error.name)) throw new Failure(error.message)
    throw error
  }
}

/** Says sentences on standard error. */
export const saying = (shell: Shell): ((sentence: string) => void) => renewedLine(shell).say
