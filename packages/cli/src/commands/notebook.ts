import { visibleLine } from '@loopwright/charts/table'
import { formatProblems } from '@loopwright/scenario'
import { OTHERS_SHARE, OthersShare } from '@loopwright/study/machine'
import type { CsvStyle } from '../output/csv.ts'
import { openStore, tellStore } from '../keptRuns.ts'
import type { MachineFlags } from '../machineFlags.ts'
import { openPage } from '../shell/openedPage.ts'
import { renewedLine } from '../shell/renewedLine.ts'
import { DONE, FAILED, INTERRUPTED, Misuse, type Shell } from '../shell/shell.ts'
import { lookOf } from '../shell/terminalLook.ts'
import { type HandoutFlags, wantsHandouts, writeHandouts } from '../output/handouts.ts'
import { checkOutputs, writeTables } from '../output/writeTables.ts'

export interface NotebookFlags extends MachineFlags, HandoutFlags {
  /** folder for tables */
  readonly csv?: string
  readonly csvStyle?: CsvStyle
  /** open the page when it is written */
  readonly open?: true
  readonly replications?: number
  readonly seed?: string
  readonly out?: string
  /** serve the page, and go on with each save */
  readonly watch?: true
  readonly port?: number
}

/** Runs a notebook: its cells to the terminal as they come, its page to a file. */
export async function notebook(shell: Shell, file: string, flags: NotebookFlags, command: string): Promise<number> {
  if (/\.(ya?ml|json)$/i.test(file)) await refuseScenario(shell, file)
  if (flags.port !== undefined) throw new Misuse('--port is for --watch, which serves the page; say --watch too')
  const [{ runNotebook }, { lineOf, placeOf }] = await Promise.all([import('@loopwright/notebook'), import('@loopwright/notebook/machine')])
  await checkOutputs(shell, flags)
  const { err, out } = shell
  const line = renewedLine(shell)
  let said = false
  const store = await openStore(shell, flags)
  // of a share nothing is told until it is known whether others have runs that the notebook needs
  const held: (() => Promise<void>)[] | null = flags.part === undefined ? null : []
  const write = (text: string): void => {
    if (said) line.clear()
    out.write(`${text}\n`)
  }
  const effects = {
    store,
    readFile: shell.readFile,
    readBeside: shell.readBeside,
    writeFile: async (path: string, content: string | Uint8Array) => {
      if (held === null) await shell.writeFile(path, content)
      else held.push(() => shell.writeFile(path, content))
    },
    importModule: async (path: string) => (await shell.loadNotebook(path)).exports,
    places: { of: placeOf, line: lineOf },
    log: (text: string) => {
      if (held === null) write(text)
      else held.push(async () => write(text))
    },
    progress: (words: string) => {
      // elsewhere the next word comes in ten seconds
      if (!said && !err.isTerminal) err.write(`${visibleLine(file)}: its studies are simulated\n`)
      said = true
      line.show(() => words)
    },
    now: shell.today,
    signal: shell.signal,
    inOneGo: shell.inOneGo,
    ...(flags.pool === undefined ? {} : { pool: flags.pool }),
  }
  const run = await runNotebook(file, effects, {
    ...flags,
    ...(flags.yes === true ? { long: true as const } : {}),
    terminal: lookOf(out),
    command,
  }).catch((error: unknown) => {
    const wrong = error instanceof Error && (error.name === 'NotebookFaults' || error.message.includes('has no notebook'))
    throw wrong ? new Misuse(error.message) : error
  })
  tellStore(shell, store)
  if (run.status === 'wrong scenario') throw new Misuse(formatProblems(run.problems, run.scenarioText, run.scenarioFile))
  const { faults } = run
  if (held !== null && faults.length > 0 && faults.every(({ message }) => message === OTHERS_SHARE)) throw new OthersShare()
  for (const each of held ?? []) await each()
  if (run.problems.length > 0)
    err.write(`${run.problems.map((problem) => visibleLine(`${problem.line}:${problem.column} ${problem.message}`)).join('\n')}\n`)
  if (flags.csv !== undefined)
    await writeTables(shell, flags.csv, (await import('@loopwright/notebook')).cellTables(run.cells), {
      style: flags.csvStyle,
      partial: run.status === 'partial',
    })
  if (run.status === 'done' && wantsHandouts(flags))
    await writeHandouts(shell, flags, {
      question: run.question,
      scenarioName: run.scenarioName,
      cells: run.cells,
      page: () => shell.readFile(run.page!),
    })
  if (faults.length > 0) {
    const places = faults.map(({ file: of, line, column }) => `${of}:${line}:${column}`)
    err.write(`${places.length === 1 ? 'a part' : `${places.length} parts`} of the notebook failed: ${places.join(', ')}\n`)
  }
  if (run.status === 'partial') return INTERRUPTED
  if (flags.open === true) await openPage(shell, run.page!)
  return faults.length === 0 ? DONE : FAILED
}

/** A file that is there and is no program. */
async function refuseScenario(shell: Shell, file: string): Promise<never> {
  const isScenario = /^\s*"?format"?\s*:/m.test(await shell.readFile(file))
  if (!isScenario)
    throw new Misuse(`"${visibleLine(file)}" is no notebook: a notebook is a TypeScript module, such as notebooks/how-many-carriers.ts`)
  throw new Misuse(
    `"${visibleLine(file)}" is a scenario; a notebook is a TypeScript module. Did you mean loopwright carriers ${visibleLine(file)}?`,
  )
}
