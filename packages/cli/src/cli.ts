/** The command, as Node runs it. */
import { main } from './main.ts'
import { nodeShell } from './nodeShell.ts'

void main(process.argv.slice(2), nodeShell()).then((code) => {
  process.exitCode = code
})
