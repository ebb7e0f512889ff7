/** Jobs that were under way when their worker or its thread ended: one of them may have been the cause, so each has a process to itself, one after the other. */
import { type ChildProcess, fork } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { LineSpec } from '@loopwright/line'
import type { Kept, Task, TaskResult } from '../runs/task.ts'
import type { FromAlone, ToAlone } from './aloneProcess.ts'

export interface Alone {
  /** Rejects with what the run threw, or with an `EndedProcess` where it took the process with it. */
  run(spec: LineSpec, task: Task): Promise<Pick<TaskResult, Kept>>
  close(): void
}

/** A job that ended the process in which it was alone. */
class EndedProcess extends Error {
  override readonly name = 'EndedProcess'
}

export function alone(): Alone {
  let child: ChildProcess | null = null
  let last: Promise<unknown> = Promise.resolve()
  const once = (spec: LineSpec, task: Task): Promise<Pick<TaskResult, Kept>> =>
    new Promise((resolve, reject) => {
      child ??= startProcess()
      const mine = child
      const over = (): void => {
        mine.off('message', answered)
        mine.off('exit', ended)
        mine.off('error', failed)
      }
      const answered = (told: FromAlone): void => {
        over()
        if (told.kind === 'done') resolve(told.result)
        else reject(Object.assign(told.name === 'RangeError' ? new RangeError(told.message) : new Error(told.message), { name: told.name }))
      }
      const forget = (): void => {
        if (child === mine) child = null
      }
      const failed = (error: Error): void => {
        over()
        forget()
        reject(new EndedProcess(`alone in a process, it could not be carried out (${error.message})`))
      }
      const ended = (code: number | null, signal: NodeJS.Signals | null): void => {
        over()
        forget()
        reject(new EndedProcess(`alone in a process, it ended that by ${signal === null ? `code ${code}` : `signal ${signal}`}`))
      }
      mine.on('message', answered)
      mine.on('exit', ended)
      mine.on('error', failed)
      mine.send({ spec, task } satisfies ToAlone, (error) => error !== null && failed(error))
    })
  return {
    run(spec, task) {
      const mine = last.then(() => once(spec, task))
      last = mine.catch(() => {})
      return mine
    },
    close() {
      child?.kill('SIGKILL')
      child = null
    },
  }
}

function startProcess(): ChildProcess {
  const fromSource = import.meta.url.endsWith('.ts')
  const file = fileURLToPath(new URL(`./${fromSource ? 'aloneProcess.ts' : 'aloneProcess.js'}`, import.meta.url))
  const execArgv = fromSource ? ['--conditions=loopwright-source', '--import', import.meta.resolve('tsx')] : []
  return fork(file, [], { execArgv, serialization: 'advanced', stdio: ['ignore', 'ignore', 'ignore', 'ipc'] })
}
