/** What the scenario file does not say: the defaults that stand for it. All other inputs are the file's own. */
import type { Table } from '@loopwright/charts/table'
import { defaultsOf, type Explained } from '@loopwright/scenario'
import { textTable } from './rows.ts'

/**
 * @param read  of the scenario file
 * @returns     null where the file says everything
 */
export function defaultInputs(read: Explained, fileName: string): Table | null {
  const found = defaultsOf(read)
  if (found.length === 0) return null
  const rows = found.map(({ field, value, why, places }) => [field, value, why === '' ? '–' : why, String(places)])
  const note = `Everything else comes from ${fileName}. The complete form, value by value: loopwright resolve ${fileName}`
  return textTable('Not said by the file: defaults', ['Field', 'Default', 'Which is', 'Places'], ['Default', 'Which is'], rows, note)
}
