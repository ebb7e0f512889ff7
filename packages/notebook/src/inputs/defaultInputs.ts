/** What the scenario file does not say: the defaults that stand for it. All other inputs are the file's own. */
import type { Table } from '@loopwright/charts/table'
import { resolveScenario } from '@loopwright/scenario'
import { textTable } from './rows.ts'

/** a line of the complete form whose value is a default, such as `release: 2 s # default` or `… # default: the reaction time` */
const DEFAULT_LINE = /^\s*([\w-]+): (.+?) # default(?:\b:? ?(.*))?$/

/**
 * @param text      of the scenario file
 * @param readBeside  gives data files that it names
 * @returns  null where the file says everything
 */
export function defaultInputs(text: string, fileName: string, readBeside: (path: string) => string | null): Table | null {
  const complete = resolveScenario(text, fileName, { files: readBeside }).text ?? ''
  const found = new Map<string, { field: string; value: string; why: string; places: number }>()
  for (const line of complete.split('\n')) {
    const [, field, value, why = ''] = DEFAULT_LINE.exec(line) ?? []
    if (field === undefined || value === undefined) continue
    const key = `${field}: ${value} ${why}`
    const entry = found.get(key) ?? { field, value, why, places: 0 }
    entry.places += 1
    found.set(key, entry)
  }
  if (found.size === 0) return null
  const rows = [...found.values()].map(({ field, value, why, places }) => [field, value, why === '' ? '–' : why, String(places)])
  const note = `Everything else comes from ${fileName}. The complete form, value by value: loopwright resolve ${fileName}`
  return textTable('Not said by the file: defaults', ['Field', 'Default', 'Which is', 'Places'], ['Default', 'Which is'], rows, note)
}
