/**
 * Worker threads that run replications. A thread has a task under way and one waiting, so that it never waits for the caller; who gets which changes no result.
 * From source, Node itself cannot load a worker written in TypeScript: it is made one file of JavaScript first.
 */
import { createRequire } from 'node:module'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { LineSpec } from '@loopwright/line'
import { heardOrNot } from './heardOrNot.ts'
import type { Task, TaskResult } from './task.ts'
import { ThreadEnd, threadEnd } from './threadEnd.ts'
import type { FromWorker, ToWorker } from './worker.ts'

/** Threads that carry out the tasks of a study. */
export interface Pool {
  /** threads */
  readonly size: number
  /** tasks that a thread takes at once; it carries them out one after the other */
  readonly depth: number
  /** The number by which tasks name this specification. */
  line(spec: LineSpec): number
  /** Runs a task on one thread, 0 … size − 1, which has fewer than `depth`. Rejects with what the task threw. */
  run(thread: number, task: Task): Promise<TaskResult>
  /** How many replications a task of this line holds, the same whoever asks; default: as many as take some tens of milliseconds, as they were found to take. */
  chunkOf?(task: Omit<Task, 'from' | 'to'>): number
  /** Starts all threads now instead of with their first tasks: they load their code while the caller still reads. */
  start(): void
  /** replications that came from a store; without one, 0 */
  readonly recalled: number
  /** Ends the threads at once, whatever they are doing; tasks under way reject. */
  close(): Promise<void>
}

interface Thread {
  readonly worker: Worker
  readonly told: Set<number>
  /** its tasks, in the order in which they are answered */
  readonly pending: { readonly resolve: (result: TaskResult) => void; readonly reject: (error: Error) => void }[]
  /** why it runs no more; null while it runs */
  ended: ThreadEnd | null
}

const DEPTH = 2

/**
 * Worker threads; each is started with its first task, or by `start`.
 *
 * @param workers  count, ≥ 1; default: one for each core
 * @param work     replications to run, where that is known: no more threads are started than there are
 * @throws RangeError  if workers is no whole number ≥ 1
 * @example createPool(2).size // => 2
 */
export function createPool(workers: number = availableParallelism(), work = Number.POSITIVE_INFINITY): Pool {
  if (!Number.isInteger(workers) || workers < 1) throw new RangeError(`workers must be a whole number of at least 1, not ${workers}`)
  const lines: LineSpec[] = []
  const size = Math.max(1, Math.min(workers, work))
  const threads: (Thread | undefined)[] = []
  let closed = false
  return {
    size,
    depth: DEPTH,
    recalled: 0,
    line(spec) {
      const known = lines.indexOf(spec)
      return known >= 0 ? known : lines.push(spec) - 1
    },
    start() {
      for (let index = 0; index < size && !closed; index += 1) threads[index] ??= startThread()
    },
    run(index, task) {
      const result = new Promise<TaskResult>((resolve, reject) => {
        if (closed) throw new ThreadEnd(`worker ${index} ended early: the pool is closed`)
        threads[index] ??= startThread()
        const thread = threads[index]!
        const post = (message: ToWorker): void => thread.worker.postMessage(message)
        if (thread.ended !== null) throw thread.ended
        if (thread.pending.length >= DEPTH) throw new Error(`worker ${index} is busy`)
        thread.pending.push({ resolve, reject })
        if (!thread.told.has(task.line)) {
          thread.told.add(task.line)
          post({ kind: 'line', line: task.line, spec: lines[task.line]! })
        }
        post({ kind: 'task', task })
      })
      return heardOrNot(result)
    },
    async close() {
      closed = true
      await Promise.all(threads.map((thread) => thread?.worker.terminate()))
    },
  }
}

function startThread(): Thread {
  const thread: Thread = { worker: startWorker(), told: new Set(), pending: [], ended: null }
  thread.worker.on('message', (message: FromWorker) => {
    const pending = thread.pending.shift()
    if (message.kind === 'done') pending?.resolve(message.result)
    else pending?.reject(rebuiltError(message.error))
  })
  const end = (error: ThreadEnd): void => {
    thread.ended ??= error
    for (const pending of thread.pending.splice(0)) pending.reject(thread.ended)
  }
  thread.worker.on('error', (error) => end(threadEnd(error)))
  thread.worker.on('exit', (code) => end(new ThreadEnd(`a worker thread ended early, with code ${code}`)))
  return thread
}

function startWorker(): Worker {
  if (!import.meta.url.endsWith('.ts')) return new Worker(new URL('./worker.js', import.meta.url))
  fromSource ??= inOneFile(fileURLToPath(new URL('./worker.ts', import.meta.url)))
  return new Worker(fromSource, { eval: true })
}

let fromSource: string | null = null

/** A worker of TypeScript with all that it imports, by the builder that the loader of source brings: a thread that loads file by file takes a second of a core. */
function inOneFile(file: string): string {
  const { buildSync } = createRequire(import.meta.url)('esbuild') as { buildSync(options: object): { outputFiles: { text: string }[] } }
  const options = { bundle: true, platform: 'node', format: 'cjs', conditions: ['loopwright-source'], write: false, logLevel: 'silent' }
  return buildSync({ ...options, entryPoints: [file] }).outputFiles[0]!.text
}

/** The error as it was thrown in the thread: same name, sentence and stack. */
function rebuiltError(told: { name: string; message: string; stack: string | null }): Error {
  const error = told.name === 'RangeError' ? new RangeError(told.message) : new Error(told.message)
  error.name = told.name
  if (told.stack !== null) error.stack = told.stack
  return error
}
