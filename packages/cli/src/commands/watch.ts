import { STORE_FOLDER } from '../keptRuns.ts'
import { wantsHandouts } from '../output/handouts.ts'
import { renewedLine } from '../shell/renewedLine.ts'
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
  const line = renewedLine(shell)
  const { workers } = fewEnough(shell, flags)
  const effects = {
    writeFile: shell.writeFile,
    log: (text: string) => {
      line.clear()
      err.write(`${clock(shell.today())}  ${text}\n`)
    },
    progress: (words: string) => line.show(() => words),
    now: shell.today,
    signal: shell.signal,
  }
  const { replications, seed, port, out: page } = flags
  await watchNotebook(file, effects, {
    startThread: () =>
      shell.startNotebookThread({ workers: workers ?? null, store: flags.fresh === true ? null : (flags.store ?? STORE_FOLDER) }),
    command,
    ...(replications === undefined ? {} : { replications }),
    ...(seed === undefined ? {} : { seed }),
    ...(workers === undefined ? {} : { workers }),
    ...(flags.yes === true ? { long: true as const } : {}),
    ...(port === undefined ? {} : { port }),
    ...(page === undefined ? {} : { out: page }),
    onServed: (address) => {
      out.write(`Page: ${address}\n`)
      err.write('it follows each save; Ctrl-C ends it\n')
      if (flags.open === true) void shell.openPage(address)
    },
  })
  return DONE
}

const clock = (date: Date): string => date.toTimeString().slice(0, 8)
