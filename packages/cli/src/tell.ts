/** Tells a result in the ways that were asked for: on the terminal or as JSON, as tables, as a page. */
import type { Shown } from './cells.ts'
import type { CsvTable } from './csv.ts'
import type { Loaded } from './loadScenario.ts'
import { DONE, INTERRUPTED, type Shell } from './shell.ts'
import { writeTables } from './tables/writeTables.ts'

export interface OutputFlags {
  /** named set of changed values in the scenario file */
  readonly variation?: string
  readonly json?: true
  /** folder for tables */
  readonly csv?: string
  /** file for the page */
  readonly out?: string
}

export interface Told {
  /** stopped by the user: what is there is told, and no page is made of it */
  readonly partial: boolean
  readonly document: () => object
  readonly tables: () => readonly CsvTable[]
  readonly shown: () => Promise<Shown>
  readonly source: Loaded
  /** repeats what was done */
  readonly command: string
  /** heading of the page. Default: the question of the scenario */
  readonly question?: string | undefined
}

/** @returns  the exit code */
export async function tell(shell: Shell, flags: OutputFlags, told: Told): Promise<number> {
  if (flags.json === true) shell.out.write(`${JSON.stringify(told.document(), null, 2)}\n`)
  if (flags.csv !== undefined) await writeTables(shell, flags.csv, told.tables())
  const wantsPage = flags.out !== undefined && !told.partial
  if (flags.json !== true || wantsPage) {
    const { showCells, writeCells } = await import('./cells.ts')
    const shown = await told.shown()
    if (flags.json !== true) showCells(shell, shown.terminal)
    if (wantsPage) {
      await writeCells(shell, flags.out!, told.source, shown.page, told)
      const says = flags.json === true ? shell.err : shell.out
      says.write(`${flags.json === true ? '' : '\n'}Page: ${flags.out}\n`)
    }
  }
  if (!told.partial) return DONE
  if (flags.out !== undefined) shell.err.write('stopped before the end: no page was written\n')
  return INTERRUPTED
}
