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
import { type FileValues, valuesOf } from './changes/values.ts'
import { addAtKey, applyTo, checkVariations, treeWith } from './changes/variations.ts'

/** How a file is read. */
export interface ReadOptions {
  /** gives the text of a file named in the scenario, null if there is none; default: files cannot be opened */
  readonly files?: (name: string) => string | null
}

/** What a reading gives, whatever is wrong. */
interface Reading {
  /** errors and warnings in file order */
  readonly problems: readonly Problem[]
  /** where the values of the complete form came from, by their path there */
  readonly origins: ReadonlyMap<string, string>
  /** what stands in the file, by path */
  readonly values: FileValues
  /** texts of the data files that it names, by their names in it */
  readonly beside: Readonly<Record<string, string>>
}

/** A file without errors: all that a result tells of it, so that nobody reads it again. */
export interface FileRead extends Omit<Reading, 'problems'> {
  readonly scenario: Scenario
  /** what the file was understood to say */
  readonly notes: ScenarioNotes
}

/** What a file says, and what is wrong with it; no scenario if any finding is an error. */
export type ReadResult = Reading & (FileRead | { readonly scenario: null; readonly notes: null })

/**
 * Reads a scenario file. Never throws on bad input: whatever is wrong is in `problems`.
 *
 * @param text  YAML 1.2 or JSON; findings carry places in it, and `formatProblems` names the file
 * @example readScenario('format: 1').scenario // => null
 */
export function readScenario(text: string, options: ReadOptions = {}): ReadResult {
  return readText(text, options)
}

export function readText(text: string, options: ReadOptions, tryVariations = true): ReadResult {
  const report = createReport(text)
  const root = readSource(text, report)
  if (root === null) return { scenario: null, problems: report.problems(), notes: null, ...NOTHING_SAID }
  return readTree(root, report, options, tryVariations ? text : null)
}

/** Of a file that cannot be read. */
export const NOTHING_SAID: Pick<ReadResult, 'origins' | 'values' | 'beside'> = { origins: new Map(), values: valuesOf(null), beside: {} }

/**
 * The same for values that are read already.
 *
 * @param text  of the file, with which its variations are tried out; null: they are not
 */
export function readTree(root: Located, report: Report, options: ReadOptions, text: string | null): ReadResult {
  const origins = new Map<string, string>()
  const beside: Record<string, string> = {}
  const files = (name: string): string | null => {
    const found = options.files?.(name) ?? null
    if (found !== null) beside[name] = found
    return found
  }
  const alternatives = root.entries.get('alternatives')
  if (alternatives !== undefined && !root.entries.has('stations')) {
    report.addAt(alternatives.keyStart, alternatives.keyEnd - alternatives.keyStart, 'alternatives', say.isDecision())
    return { scenario: null, problems: report.problems(), notes: null, ...NOTHING_SAID }
  }
  checkShape(root, report)
  const first = root.entries.keys().next().value
  if (root.entries.has('format') && first !== 'format') {
    const entry = root.entries.get('format')!
    report.addAt(entry.keyStart, entry.keyEnd - entry.keyStart, 'format', say.formatNotFirst())
  }
  const resolved = resolve(
    { report, files: options.files === undefined ? null : files, origins, zoneIndex: new Map(), tables: [], takenOut: new Set() },
    root,
  )
  checkVariations(root, report)
  if (text !== null && resolved !== null) tryAll(text, root, resolved.scenario.line.zones.length, report, options)
  const found = report.hasErrors() ? null : resolved
  const said = { problems: report.problems(), origins, values: valuesOf(root), beside }
  return found === null ? { scenario: null, notes: null, ...said } : { scenario: found.scenario, notes: found.notes, ...said }
}

/** More text than this times the number of variations is not tried out: it would keep the reader waiting. */
const TRY_CHARACTERS_MAX = 100_000
/** and so are more zones than this times that number */
const TRY_ZONES_MAX = 5000

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
  return changed.text === null ? changed.problems : readText(changed.text, options, false).problems
}

/** Reads the file once with each variation; the first error of each is a finding at its name. */
function tryAll(text: string, root: Located, zones: number, report: Report, options: ReadOptions): void {
  const variations = [...(root.entries.get('variations')?.value.entries.values() ?? [])]
  const long = Math.max(text.length / TRY_CHARACTERS_MAX, zones / TRY_ZONES_MAX) * variations.length > 1
  if (report.hasErrors() || long) return
  for (const entry of variations) {
    const problems = tried(text, root, entry, options)
    const first = problems.find((problem) => problem.severity === 'error')
    if (first !== undefined) addAtKey(report, entry, say.variationBroken(entry.key, `${first.message} (${first.path})`))
  }
}
