import { formatProblems } from '@loopwright/scenario'
import { openStore, type StoreFlags, tellStore } from '../keptRuns.ts'
import { DONE, INTERRUPTED, Misuse, type Shell } from '../shell.ts'

export interface NotebookFlags extends StoreFlags {
  readonly replications?: number
  readonly seed?: string
  readonly workers?: number
  readonly out?: string
}

/** Runs a notebook: its cells to the terminal as they come, its page to a file. */
export async function notebook(shell: Shell, file: string, flags: NotebookFlags, command: string): Promise<number> {
  const { runNotebook } = await import('@loopwright/notebook')
  if (flags.out !== undefined) await shell.checkWritable(flags.out)
  const { err, out } = shell
  const clear = err.isTerminal ? '\r\u001b[2K' : ''
  let said = false
  const store = await openStore(shell, flags)
  const effects = {
    store,
    readFile: shell.readFile,
    readBeside: shell.readBeside,
    writeFile: shell.writeFile,
    importModule: shell.importModule,
    log: (text: string) => {
      if (said) err.write(clear)
      out.write(`${text}\n`)
    },
    progress: (line: string) => {
      if (err.isTerminal) err.write(`${clear}${line.slice(0, 79)}`)
      else if (!said) err.write(`${line}\n`)
      said = true
    },
    now: shell.today,
    signal: shell.signal,
  }
  const run = await runNotebook(file, effects, { ...flags, colour: out.colour, command }).catch((error: unknown) => {
    throw error instanceof TypeError && error.message.includes('has no notebook') ? new Misuse(error.message) : error
  })
  tellStore(shell, store)
  if (run.status === 'wrong scenario') throw new Misuse(formatProblems(run.problems, run.scenarioText, run.scenarioFile))
  if (run.problems.length > 0)
    err.write(`${run.problems.map((problem) => `${problem.line}:${problem.column} ${problem.message}`).join('\n')}\n`)
  return run.status === 'partial' ? INTERRUPTED : DONE
}
