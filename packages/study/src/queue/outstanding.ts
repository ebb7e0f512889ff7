/** The jobs that a study waits for: each is answered once, in whatever order, whatever becomes of messages about it. */
import type { Job } from './job.ts'

export interface Waiting {
  readonly id: string
  readonly job: Job
  readonly resolve: (file: Uint8Array) => void
  readonly reject: (error: Error) => void
  /** milliseconds of a clock that does not jump, when something about it was noticed that must not last; null: nothing */
  suspectMs: number | null
}

export class Outstanding {
  readonly #waiting = new Map<string, Waiting>()
  #next = 0
  /** why a job is given up, kept until nothing else is under way */
  readonly #setAside: { waiting: Waiting; error: Error }[] = []

  add(waiting: Waiting): void {
    this.#waiting.set(waiting.id, waiting)
  }

  get(id: string): Waiting | undefined {
    return this.#waiting.get(id)
  }

  get count(): number {
    return this.#waiting.size
  }

  /** The answer to a job; a second one to the same is nobody's. */
  answer(id: string, file: Uint8Array): void {
    const waiting = this.#waiting.get(id)
    if (waiting === undefined) return
    this.#waiting.delete(id)
    waiting.resolve(file)
    this.#settle()
  }

  /** The run itself failed, as it would anywhere: the study fails at once. */
  fail(id: string, error: Error): void {
    const waiting = this.#waiting.get(id)
    if (waiting === undefined) return
    this.#waiting.delete(id)
    waiting.reject(error)
    this.#settle()
  }

  /** A job is given up; the study is told when all others are in, so that none of them is lost. */
  setAside(id: string, error: Error): void {
    const waiting = this.#waiting.get(id)
    if (waiting === undefined) return
    this.#waiting.delete(id)
    this.#setAside.push({ waiting, error })
    this.#settle()
  }

  /** Gives up everything: nobody waits any more. */
  end(): Waiting[] {
    const left = [...this.#waiting.values()]
    this.#waiting.clear()
    return left
  }

  /** Some of them to be looked at, the oldest first and others in turn: each has its turn. */
  some(count: number): Waiting[] {
    const all = [...this.#waiting.values()]
    const oldest = all.slice(0, Math.ceil(count / 2))
    const rest = all.slice(oldest.length)
    if (rest.length === 0) return oldest
    this.#next %= rest.length
    const turn = rest.slice(this.#next, this.#next + count - oldest.length)
    this.#next += turn.length
    return [...oldest, ...turn]
  }

  /** With the ids of all that are set aside in one sentence. */
  #settle(): void {
    if (this.#waiting.size > 0) return
    const given = this.#setAside.splice(0)
    const words = given.map(({ error }) => error.message)
    for (const { waiting, error } of given) {
      error.message = words.join('\n')
      waiting.reject(error)
    }
  }
}
