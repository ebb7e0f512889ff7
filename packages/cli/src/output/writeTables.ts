import { join } from 'node:path'
import { checkHandouts, type HandoutFlags } from './handouts.ts'
import type { Shell } from '../shell/shell.ts'
import { type CsvStyle, type CsvTable, csvText } from './csv.ts'

/**
 * Writes each table to `<folder>/<its name>.csv`; other files in the folder stay as they are.
 *
 * @param partial  the study was stopped: the files are called `<name>.partial.csv`, so that complete ones of an earlier run stay
 */
export async function writeTables(
  shell: Shell,
  folder: string,
  tables: readonly CsvTable[],
  { style = 'comma', partial = false }: { readonly style?: CsvStyle | undefined; readonly partial?: boolean } = {},
): Promise<void> {
  const end = partial ? '.partial.csv' : '.csv'
  for (const table of tables) await shell.writeFile(join(folder, `${table.name}${end}`), csvText(table, style))
  const of = partial ? 'tables of what was done before the stop' : 'tables'
  shell.err.write(`${of}: ${tables.length} files in ${folder}; columns${end} says what their columns are\n`)
}

/**
 * Tries before a study is run whether what it tells can be written: its page, and its tables.
 *
 * @throws Misuse, Failure  as `Shell.checkWritable`
 */
export async function checkOutputs(
  shell: Shell,
  { out, csv, ...handouts }: HandoutFlags & { readonly out?: string; readonly csv?: string },
): Promise<void> {
  await checkHandouts(shell, handouts)
  if (out !== undefined) await shell.checkWritable(out)
  if (csv !== undefined) await shell.checkWritable(join(csv, 'columns.csv'))
}
