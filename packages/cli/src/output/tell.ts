/** Tells a result in the ways that were asked for: in the terminal or as JSON, as files of tables, as a page. All but JSON show the same cells. */
import type { Tale } from '@loopwright/notebook'
import type { ScenarioNotes } from '@loopwright/scenario'
import type { Loaded } from '../loadScenario.ts'
import type { CsvStyle } from './csv.ts'
import { DONE, INTERRUPTED, type Shell } from '../shell/shell.ts'
import { lookOf } from '../shell/terminalLook.ts'
import { type HandoutFlags, wantsHandouts, writeHandouts } from './handouts.ts'
import { writeTables } from './writeTables.ts'

export interface OutputFlags extends HandoutFlags {
  /** named set of changed values in the scenario file */
  readonly variation?: string
  readonly json?: true
  /** folder for tables */
  readonly csv?: string
  /** default: comma */
  readonly csvStyle?: CsvStyle
  /** file for the page */
  readonly out?: string
  /** means with the luck of the windows simulated */
  readonly plain?: true
}

export interface AnsweredStudy<D = undefined> {
  /** stopped by the user: what is there is told, and no page is made of it */
  readonly partial: boolean
  /** what --json prints; null: the command has no such option */
  readonly document: (() => object) | null
  /** a door of the notebook beside its index; a document needs none */
  readonly door?: () => Promise<D>
  readonly tale: (notebook: Notebook, door: D) => Tale
  /** of the scenario: stands over the page's heading */
  readonly name: string
  /** repeats what was done */
  readonly command: string
}

/** What tells of results, loaded when there is one. */
export type Notebook = typeof import('@loopwright/notebook')

const TELLING = 'the result was put into words: it is not told'

/** @returns  the exit code */
export async function tell<D = undefined>(shell: Shell, flags: OutputFlags, told: AnsweredStudy<D>): Promise<number> {
  const { document } = told
  if (flags.json === true && document !== null)
    shell.out.write(`${await shell.inOneGo(TELLING, () => JSON.stringify(document(), null, 2))}\n`)
  const wantsPage = flags.out !== undefined && !told.partial
  const wantsMore = wantsHandouts(flags) && !told.partial
  if (flags.json !== true || flags.csv !== undefined || wantsPage || wantsMore) {
    const [notebook, door] = await Promise.all([import('@loopwright/notebook'), told.door?.()])
    const { cellTables, printer, writePage } = notebook
    const { question, cells } = await shell.inOneGo(TELLING, () => told.tale(notebook, door as D))
    if (flags.json !== true) {
      const { print, end } = printer((text) => shell.out.write(`${text}\n`), lookOf(shell.out))
      for (const cell of cells) print(cell)
      end()
    }
    if (flags.csv !== undefined) await writeTables(shell, flags.csv, cellTables(cells), { style: flags.csvStyle, partial: told.partial })
    const { name, command } = told
    const pageOf = async (): Promise<string> => await writePage({ question, scenarioName: name, date: shell.today(), command }, cells)
    if (wantsPage) {
      const page = await pageOf().catch((error: unknown) => {
        // Ctrl-C in a terminal reaches the programs that make the page as well
        if (shell.signal.aborted) return null
        throw error
      })
      if (page === null || shell.signal.aborted) {
        shell.err.write('stopped while the page was made: no page was written\n')
        return INTERRUPTED
      }
      await shell.writeFile(flags.out!, page)
      const says = flags.json === true ? shell.err : shell.out
      says.write(`${flags.json === true ? '' : '\n'}Page: ${flags.out}\n`)
    }
    if (wantsMore) await writeHandouts(shell, flags, { question, scenarioName: name, cells, page: pageOf })
  }
  if (!told.partial) return shell.signal.aborted ? INTERRUPTED : DONE
  if (flags.out !== undefined || wantsHandouts(flags)) shell.err.write('stopped before the end: no page was written\n')
  return INTERRUPTED
}

/** What a tale of a study knows beside its result. */
export function storyOptions(
  source: Pick<Loaded, 'file' | 'text' | 'problems' | 'read'> &
    Partial<Pick<Loaded, 'variation'>> & { readonly notes: Pick<ScenarioNotes, 'shiftsPerDay' | 'shiftStarts'> },
  { plain, partial = false }: Pick<OutputFlags, 'plain'> & { readonly partial?: boolean } = {},
) {
  const { file, text, read, problems, notes, variation = null } = source
  return {
    scenarioFile: file,
    // of a study that was stopped no page is made, and its words shall not keep anybody waiting
    ...(partial ? {} : { scenarioText: text, read }),
    variation,
    problems,
    notes,
    plain: plain === true,
  }
}
