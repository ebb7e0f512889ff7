import { join } from 'node:path'
import { type CsvStyle, type CsvTable, csvText } from './csv.ts'
import type { Shell } from '../shell/shell.ts'

/** Writes each table to `<folder>/<its name>.csv`; other files in the folder stay as they are. */
export async function writeTables(shell: Shell, folder: string, tables: readonly CsvTable[], style: CsvStyle = 'comma'): Promise<void> {
  for (const table of tables) await shell.writeFile(join(folder, `${table.name}.csv`), csvText(table, style))
  shell.err.write(`tables: ${tables.length} files in ${folder}; columns.csv says what their columns are\n`)
}
