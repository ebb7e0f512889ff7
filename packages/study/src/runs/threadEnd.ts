/** That a thread ended while a run was under way: it says nothing about the run, which may be tried on another. */
export class ThreadEnd extends Error {
  override readonly name: string

  constructor(message: string, options: { readonly name?: 'ThreadEnd' | 'OutOfMemory'; readonly cause?: unknown } = {}) {
    super(message, options.cause === undefined ? {} : { cause: options.cause })
    this.name = options.name ?? 'ThreadEnd'
  }
}

/** Why a thread ended that threw outside of a task; want of memory is no defect, and is told by its name. */
export function threadEnd(thrown: unknown): ThreadEnd {
  if (!(thrown instanceof Error)) return new ThreadEnd(String(thrown))
  if ((thrown as NodeJS.ErrnoException).code !== 'ERR_WORKER_OUT_OF_MEMORY') return new ThreadEnd(thrown.message, { cause: thrown })
  const remedy = 'fewer threads (--workers), fewer replications or a shorter window take less'
  return new ThreadEnd(`a thread ran out of memory; ${remedy}`, { name: 'OutOfMemory' })
}
