/** What the command does in a thread: it carries out the notebook that is being written, until the thread is ended. */
import type { MessagePort } from 'node:worker_threads'
import type { ToThread } from '@loopwright/notebook/machine'
import { readBeside, readWhole } from './nodeFiles.ts'
import { loadModule } from './nodeShell.ts'
import type { NotebookThreadOptions } from './shell.ts'

export async function answerNotebooks(port: MessagePort, { workers, store }: NotebookThreadOptions): Promise<void> {
  // what is said before all is loaded waits
  const waiting: ToThread[] = []
  let hear = (message: ToThread): void => void waiting.push(message)
  port.on('message', (message: ToThread) => hear(message))
  const [{ answerRuns }, { createPool, folderStore }] = await Promise.all([
    import('@loopwright/notebook/machine'),
    import('@loopwright/study/machine'),
  ])
  const pool = createPool(workers ?? undefined)
  pool.start()
  answerRuns(
    {
      postMessage: (message) => port.postMessage(message),
      on: (_, answer) => {
        hear = answer
        for (const message of waiting.splice(0)) answer(message)
      },
    },
    {
      load: loadModule,
      readFile: readWhole,
      readBeside,
      now: () => new Date(),
      pool,
      store: store === null ? null : await folderStore(store),
    },
  )
}
