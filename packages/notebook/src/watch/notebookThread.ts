/** The thread in which a notebook is carried out, by who serves its page: one that does not hear is ended, and another one begins. */
import type { Worker } from 'node:worker_threads'
import type { FromThread, Outcome, Said, ToThread, WatchedOptions } from './protocol.ts'

export interface NotebookThread {
  /**
   * Carries a notebook out.
   *
   * @param hear    told of what is being done; nothing after the end
   * @param signal  it is no longer wanted: a thread that does not say so in a moment is ended in the midst of what it does
   */
  run(file: string, options: WatchedOptions, hear: (said: Exclude<Said, { kind: 'ended' }>) => void, signal: AbortSignal): Promise<Outcome>
  close(): Promise<void>
}

/** milliseconds; a study that is stopped takes a part of them */
const DEAF_MS = 400

/** @param start  starts a thread that answers: `answerRuns` */
export function notebookThread(start: () => Worker): NotebookThread {
  let worker: Worker | null = null
  let id = 0
  const begin = (): Worker => {
    const made = start()
    // between two runs, such as by a timer of the notebook: the next run has a thread of its own
    made.on('error', () => {})
    made.on('exit', () => {
      if (worker === made) worker = null
    })
    worker = made
    return made
  }
  begin()
  const end = async (): Promise<void> => {
    const ended = worker
    worker = null
    await ended?.terminate()
  }
  return {
    run(file, options, hear, signal) {
      id += 1
      const own = id
      const thread = worker ?? begin()
      return new Promise((resolve) => {
        let deaf: NodeJS.Timeout | undefined
        const done = (outcome: Outcome): void => {
          clearTimeout(deaf)
          signal.removeEventListener('abort', stop)
          thread.off('message', onMessage).off('error', onError).off('exit', onExit)
          resolve(outcome)
        }
        const onMessage = (message: FromThread): void => {
          if (message.id !== own) return
          if (message.kind === 'ended') done(message.outcome)
          else hear(message)
        }
        const onError = (error: unknown): void => {
          void end()
          done({ kind: 'trouble', text: `the notebook has ended its thread: ${error instanceof Error ? error.message : String(error)}` })
        }
        const onExit = (code: number): void => done({ kind: 'trouble', text: `the notebook has ended its thread, with code ${code}` })
        const stop = (): void => {
          thread.postMessage({ kind: 'stop' } satisfies ToThread)
          deaf = setTimeout(() => {
            void end()
            done({ kind: 'stopped' })
          }, DEAF_MS)
        }
        thread.on('message', onMessage).on('error', onError).on('exit', onExit)
        thread.postMessage({ kind: 'run', id: own, file, options } satisfies ToThread)
        if (signal.aborted) stop()
        else signal.addEventListener('abort', stop, { once: true })
      })
    },
    close: end,
  }
}
