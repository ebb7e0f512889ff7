/** What a worker says of a job that it could not do. */
import { type Job, jobId } from './job.ts'

interface Told {
  readonly name: string
  readonly message: string
}

/** As the reason of a failed job: what the run itself threw, which it would throw anywhere. */
export const failureText = ({ name, message }: Error): string => JSON.stringify({ name, message } satisfies Told)

/** The error as it was thrown; null where the reason is another. */
export function thrownFailure(reason: string): Error | null {
  try {
    const { name, message } = JSON.parse(reason) as Partial<Told>
    if (typeof name !== 'string' || typeof message !== 'string') return null
    const error = name === 'RangeError' ? new RangeError(message) : new Error(message)
    error.name = name
    return error
  } catch {
    return null
  }
}

export const asError = (thrown: unknown): Error => (thrown instanceof Error ? thrown : new Error(String(thrown)))

/** Which runs a job that is set aside would have given, and why it is. */
export const setAsideWords = ({ carriers, from, to, seed, key }: Job, reason: string): string =>
  `replications ${from} to ${to - 1} with ${carriers} carriers, seed ${seed}, are set aside: ${reason} (job ${jobId({ key, from, to })})`

/** A job that ended those who tried it. */
export class SetAside extends Error {
  override readonly name = 'SetAside'
}

/** Somebody took back what this study waits for. */
export class TakenBack extends Error {
  override readonly name = 'TakenBack'
}

/** No answer from the server, in a sentence for people. */
export class NoQueue extends Error {
  override readonly name = 'NoQueue'
}
