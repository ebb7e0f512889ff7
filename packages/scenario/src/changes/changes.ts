/** A scenario file read with some of its values changed, by path: what a command line or a notebook changes, without another file. */
import type { Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import type { Problem } from '../problems/problems.ts'
import { type ReadOptions, type ReadResult, NOTHING_SAID, readText, readTree } from '../read.ts'
import { createReport } from '../problems/report.ts'
import { readSource, readValue } from '../text/source.ts'
import { graft, stepPath } from './graft.ts'
import type { ChangeValue } from './values.ts'
import { firstStep, parsePath } from './variations.ts'

/** New values by path, as under `variations`: `{ 'drive.speed': '12 m/min', 'carriers.count': 15 }`. */
export type Changes = Readonly<Record<string, ChangeValue>>

/** How a file is read with changes. */
export interface ChangeOptions extends ReadOptions {
  /** stands before a change where a finding shows it, such as `--set `; default: nothing */
  readonly changePrefix?: string
}

/** One change as text, and where it stands behind the text of the file. */
interface Placed {
  readonly label: string
  readonly path: string
  readonly value: string
  readonly start: number
  readonly firstLine: number
}

/**
 * Reads a scenario file with changes put in. Never throws on bad input: whatever is wrong is in `problems`.
 *
 * Paths are those of variations; keys that are missing on the way are made, later changes go over earlier ones.
 * A finding inside a changed value stands in that change (`change`, with line and column in it); one elsewhere in the file that the
 * file alone would not have names the changes. The file's own variations are not tried out.
 *
 * @param text     YAML 1.2 or JSON
 * @param changes  by path
 * @example readScenarioWith('format: 1', { 'carriers.count': '1.5' }).problems.at(-1)?.change // => 'carriers.count=1.5'
 */
export function readScenarioWith(text: string, changes: Changes, options: ChangeOptions = {}): ReadResult {
  const placed = place(text, changes, options.changePrefix ?? '')
  const report = createReport([text, ...placed.map(({ label }) => label)].join('\n'))
  const file = readSource(text, report)
  if (file === null) return { scenario: null, problems: report.problems(), notes: null, ...NOTHING_SAID }
  let root: Located = file
  for (const change of placed) {
    const prefix = change.label.length - change.path.length - 1 - change.value.length
    const key = { start: change.start + prefix, end: change.start + prefix + change.path.length }
    const steps = parsePath(change.path)
    const fault = steps === null ? say.badPath(change.path) : firstStep(change.path, steps)
    const value = fault === null ? readValue(change.value, key.end + 1, steps!.reduce(stepPath, ''), report) : null
    const changed: Located | null = value === null ? null : graft(root, steps!, { ...value, keyStart: key.start, keyEnd: key.end })
    if (changed !== null) root = changed
    else if (fault !== null || value !== null)
      report.addAt(key.start, change.path.length, change.path, fault ?? say.pathNowhere(change.path, String(steps!.at(-1)), null))
  }
  const read = readTree(root, report, options, null)
  return { ...read, problems: located(report.problems(), placed, () => readText(text, options, false).problems) }
}

/** Each change on lines of its own behind the text of the file, so that places in it are known as those in the file are. */
function place(text: string, changes: Changes, prefix: string): Placed[] {
  let start = text.length + 1
  let firstLine = text.split('\n').length + 1
  return Object.entries(changes).map(([path, given]) => {
    const value = typeof given === 'string' ? given : (JSON.stringify(given) ?? '')
    const label = `${prefix}${path}=${value}`
    const here = { label, path, value, start, firstLine }
    start += label.length + 1
    firstLine += label.split('\n').length
    return here
  })
}

/** Findings with their place: in a change, or in the file; what the file alone does not have is told with the changes. */
function located(problems: readonly Problem[], placed: readonly Placed[], alone: () => readonly Problem[]): Problem[] {
  const first = placed[0]?.firstLine ?? Number.POSITIVE_INFINITY
  if (problems.length === 0 || placed.length === 0) return [...problems]
  const known = new Set(problems.some(({ line }) => line < first) ? alone().map((problem) => keyOf(problem)) : [])
  const together = placed.map(({ label }) => label).join(' and ')
  return problems.map((problem) => {
    const change = placed.findLast(({ firstLine }) => firstLine <= problem.line)
    if (change !== undefined) return { ...problem, change: change.label, line: problem.line - change.firstLine + 1 }
    return known.has(keyOf(problem)) ? problem : { ...problem, message: `${problem.message} (with ${together})` }
  })
}

function keyOf({ code, line, column, message }: Problem): string {
  return JSON.stringify([code, line, column, message])
}
