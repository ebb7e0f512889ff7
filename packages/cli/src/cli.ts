/** The command, as Node runs it. */
import { main } from './main.ts'
import { nodeShell } from './nodeShell.ts'

process.exitCode = await main(process.argv.slice(2), nodeShell())
