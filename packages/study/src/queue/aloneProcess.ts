/** A process that carries out single jobs of which one may end it: hears of a line and a task, answers, and waits for the next. */
import type { LineSpec } from '@loopwright/line'
import { type Kept, type Task, type TaskResult, TaskRunner } from '../runs/task.ts'

export interface ToAlone {
  readonly spec: LineSpec
  /** its line is 0 */
  readonly task: Task
}

export type FromAlone =
  | { readonly kind: 'done'; readonly result: Pick<TaskResult, Kept> }
  | { readonly kind: 'failed'; readonly name: string; readonly message: string }

process.on('message', ({ spec, task }: ToAlone) => process.send?.(perform(spec, task)))
process.on('disconnect', () => process.exit())

function perform(spec: LineSpec, task: Task): FromAlone {
  try {
    const runner = new TaskRunner()
    runner.learnLine(task.line, spec)
    const { rows, results, passages } = runner.perform(task)
    return { kind: 'done', result: { rows, results, passages } }
  } catch (thrown) {
    const { name, message } = thrown instanceof Error ? thrown : new Error(String(thrown))
    return { kind: 'failed', name, message }
  }
}
