/** A worker thread: hears of lines and tasks, answers each task. */
import { parentPort } from 'node:worker_threads'
import type { LineSpec } from '@loopwright/line'
import { type Task, type TaskResult, TaskRunner } from './task.ts'

export type ToWorker =
  | { readonly kind: 'line'; readonly line: number; readonly spec: LineSpec }
  | { readonly kind: 'task'; readonly task: Task }

export type FromWorker =
  | { readonly kind: 'done'; readonly result: TaskResult }
  | { readonly kind: 'failed'; readonly error: { name: string; message: string; stack: string | null } }

const port = parentPort
if (port === null) throw new Error('worker.ts runs in a worker thread only')
const runner = new TaskRunner()

port.on('message', (message: ToWorker) => {
  if (message.kind === 'line') {
    runner.learnLine(message.line, message.spec)
    return
  }
  // copied, not handed over: V8 compiles columns for memory that is never handed over, and throws all of it away, for slower code, when the first is
  port.postMessage(perform(message.task))
})

function perform(task: Task): FromWorker {
  try {
    return { kind: 'done', result: runner.perform(task) }
  } catch (thrown) {
    const error = thrown instanceof Error ? thrown : new Error(String(thrown))
    return { kind: 'failed', error: { name: error.name, message: error.message, stack: error.stack ?? null } }
  }
}
