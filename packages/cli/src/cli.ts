/** The command, as Node runs it; in a thread of it, what carries out notebooks. */
import { parentPort, workerData } from 'node:worker_threads'
import { main } from './main.ts'
import { answerNotebooks } from './shell/answerNotebooks.ts'
import { nodeShell } from './shell/nodeShell.ts'
import { FAILED, INTERRUPTED, type NotebookThreadOptions } from './shell/shell.ts'

if (parentPort !== null) void answerNotebooks(parentPort, workerData as NotebookThreadOptions)
else {
  const shell = nodeShell()
  void main(process.argv.slice(2), shell).then(async (code) => {
    const fault = await shell.written()
    if (fault !== null) shell.err.write(`${fault}\n`)
    // what was broken off may have left threads behind
    if (code === INTERRUPTED) process.exit(code)
    process.exitCode = fault === null ? code : FAILED
  })
}
