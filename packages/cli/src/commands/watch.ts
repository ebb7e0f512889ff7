import { createPool } from '@loopwright/study/machine'
import { openStore, tellStore } from '../keptRuns.ts'
import { wantsHandouts } from '../output/handouts.ts'
import { DONE, Misuse, type Shell } from '../shell/shell.ts'
import { fewEnough } from '../threads.ts'
import type { NotebookFlags } from './notebook.ts'

/** Serves the page of a notebook and carries it out again with each save. Ctrl-C is its usual end. */
export async function watch(shell: Shell, file: string, flags: NotebookFlags, command: string): Promise<number> {
  if (flags.csv !== undefined) throw new Misuse('--watch writes no tables; leave out --csv, or run the notebook without --watch')
  if (wantsHandouts(flags)) throw new Misuse('--watch hands nothing out but the page; leave out --svg, --png, --pdf and --pptx')
  if (flags.out !== undefined) await shell.checkWritable(flags.out)
  await shell.readFile(file)
  const { watchNotebook } = await import('@loopwright/notebook/machine')
  const { err, out } = shell
  const clear = err.isTerminal ? '\r\u001b[2K' : ''
  const { workers } = fewEnough(shell, flags)
  const pool = shell.pool ?? createPool(workers)
  const store = await openStore(shell, flags)
  const effects = {
    store,
    pool,
    readFile: shell.readFile,
    readBeside: shell.readBeside,
    writeFile: shell.writeFile,
    log: (text: string) => err.write(`${clear}${clock(shell.today())}  ${text}\n`),
    progress: (line: string) => {
      if (err.isTerminal) err.write(`${clear}${[...line].slice(0, err.columns - 1).join('')}`)
    },
    now: shell.today,
    signal: shell.signal,
  }
  const { replications, seed, port, out: page } = flags
  try {
    await watchNotebook(file, effects, {
      load: shell.loadNotebook,
      command,
      ...(replications === undefined ? {} : { replications }),
      ...(seed === undefined ? {} : { seed }),
      ...(workers === undefined ? {} : { workers }),
      ...(port === undefined ? {} : { port }),
      ...(page === undefined ? {} : { out: page }),
      onServed: (address) => {
        out.write(`Page: ${address}\n`)
        err.write('it follows each save; Ctrl-C ends it\n')
        if (flags.open === true) void shell.openPage(address)
      },
    })
  } finally {
    if (shell.pool === undefined) await pool.close()
  }
  tellStore(shell, store)
  return DONE
}

const clock = (date: Date): string => date.toTimeString().slice(0, 8)
