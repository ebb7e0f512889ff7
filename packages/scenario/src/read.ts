/** Text to scenario: the one way in. */

import type { Entry, Located } from './text/located.ts'
import * as say from './problems/messages.ts'
import type { ScenarioNotes } from './problems/notes.ts'
import type { Problem } from './problems/problems.ts'
import { createReport, type Report } from './problems/report.ts'
import { resolve } from './resolve/resolve.ts'
import type { Scenario } from './scenario.ts'
import { checkShape } from './text/shape.ts'
import { readSource } from './text/source.ts'
import { addAtKey, applyTo, checkVariations, treeWith } from './changes/variations.ts'

/** How a file is read. */
export interface ReadOptions {
  /** gives the text of a file named in the scenario, null if there is none; default: files cannot be opened */
  readonly files?: (name: string) => string | null
}

/** What a file says, and what is wrong with it. */
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
 * @param text  YAML 1.2 or JSON; findings carry places in it, and `formatProblems` names the file
 * @example readScenario('format: 1').scenario // => null
 */
export function readScenario(text: string, options: ReadOptions = {}): ReadResult {
  const { scenario, problems, notes } = readWithOrigins(text, options)
  return { scenario, problems, notes }
}

export function readWithOrigins(text: string, options: ReadOptions, tryVariations = true): Reading {
  const report = createReport(text)
  const root = readSource(text, report)
  if (root === null) return { scenario: null, problems: report.problems(), notes: null, origins: new Map() }
  return readTree(root, report, options, tryVariations ? text : null)
}

/**
 * The same for values that are read already.
 *
 * @param text  of the file, with which its variations are tried out; null: they are not
 */
export function readTree(root: Located, report: Report, options: ReadOptions, text: string | null): Reading {
  const origins = new Map<string, string>()
  checkShape(root, report)
  const first = root.entries.keys().next().value
  if (root.entries.has('format') && first !== 'format') {
    const entry = root.entries.get('format')!
    report.addAt(entry.keyStart, entry.keyEnd - entry.keyStart, 'format', say.formatNotFirst())
  }
  const resolved = resolve({ report, files: options.files ?? null, origins, zoneIndex: new Map(), tables: [], takenOut: new Set() }, root)
  checkVariations(root, report)
  if (text !== null && resolved !== null) tryAll(text, root, report, options)
  const found = report.hasErrors() ? null : resolved
  return { scenario: found?.scenario ?? null, problems: report.problems(), notes: found?.notes ?? null, origins }
}

/** More text than this times the number of variations is not tried out: it would keep the reader waiting. */
const TRY_CHARACTERS_MAX = 100_000

/** signs that begin a name for a value, and a use of it */
const REFERENCES = /[&*]/

/** What is wrong with the file once a variation is put in: quickly where no value stands in two places, else by the text that it would make. */
function tried(text: string, root: Located, variation: Entry, options: ReadOptions): readonly Problem[] {
  const tree = REFERENCES.test(text) ? null : treeWith(root, variation)
  if (tree !== null) {
    const report = createReport(text)
    readTree(tree, report, options, null)
    return report.problems()
  }
  const changed = applyTo(root, text, variation.key, createReport(text))
  return changed.text === null ? changed.problems : readWithOrigins(changed.text, options, false).problems
}

/** Reads the file once with each variation; the first error of each is a finding at its name. */
function tryAll(text: string, root: Located, report: Report, options: ReadOptions): void {
  const variations = [...(root.entries.get('variations')?.value.entries.values() ?? [])]
  if (report.hasErrors() || text.length * variations.length > TRY_CHARACTERS_MAX) return
  for (const entry of variations) {
    const problems = tried(text, root, entry, options)
    const first = problems.find((problem) => problem.severity === 'error')
    if (first !== undefined) addAtKey(report, entry, say.variationBroken(entry.key, `${first.message} (${first.path})`))
  }
}
