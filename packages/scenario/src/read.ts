/** Text to scenario: the one way in. */
import * as say from './messages.ts'
import type { ScenarioNotes } from './notes.ts'
import type { Problem } from './problems.ts'
import { createReport } from './report.ts'
import { resolve } from './resolve/resolve.ts'
import type { Scenario } from './scenario.ts'
import { checkShape } from './shape.ts'
import { readSource } from './source.ts'

export interface ReadOptions {
  /** gives the text of a file named in the scenario, null if there is none; default: files cannot be opened */
  readonly files?: (name: string) => string | null
}

export interface ReadResult {
  /** null if any finding is an error */
  readonly scenario: Scenario | null
  /** errors and warnings in file order */
  readonly problems: readonly Problem[]
  /** what the file was understood to say; null without a scenario */
  readonly notes: ScenarioNotes | null
}

export interface Reading extends ReadResult {
  /** where the values of the complete form came from, by their path there */
  readonly origins: ReadonlyMap<string, string>
}

/**
 * Reads a scenario file. Never throws on bad input: whatever is wrong is in `problems`.
 *
 * @param text      YAML 1.2 or JSON
 * @param fileName  only for messages
 * @example readScenario('format: 1', 'empty.yaml').scenario // => null
 */
export function readScenario(text: string, fileName: string, options: ReadOptions = {}): ReadResult {
  const { scenario, problems, notes } = readWithOrigins(text, fileName, options)
  return { scenario, problems, notes }
}

export function readWithOrigins(text: string, _fileName: string, options: ReadOptions): Reading {
  const report = createReport(text)
  const origins = new Map<string, string>()
  const root = readSource(text, report)
  if (root === null) return { scenario: null, problems: report.problems(), notes: null, origins }
  checkShape(root, report)
  const first = root.entries.keys().next().value
  if (root.entries.has('format') && first !== 'format') {
    const entry = root.entries.get('format')!
    report.addAt(entry.keyStart, entry.keyEnd - entry.keyStart, 'format', say.formatNotFirst())
  }
  const resolved = resolve({ report, files: options.files ?? null, origins }, root)
  const found = report.hasErrors() ? null : resolved
  return { scenario: found?.scenario ?? null, problems: report.problems(), notes: found?.notes ?? null, origins }
}
