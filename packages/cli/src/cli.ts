/** The command, as Node runs it. */
import { main } from './main.ts'
import { nodeShell } from './shell/nodeShell.ts'
import { FAILED } from './shell/shell.ts'

const shell = nodeShell()
void main(process.argv.slice(2), shell).then(async (code) => {
  const fault = await shell.written()
  if (fault !== null) shell.err.write(`${fault}\n`)
  process.exitCode = fault === null ? code : FAILED
})
