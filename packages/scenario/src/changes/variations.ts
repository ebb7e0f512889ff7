/** Variations: named sets of changed values, addressed by path, kept beside the scenario they change. */
import { Document, isMap, isScalar, type Node, parseDocument } from 'yaml'
import type { Entry, Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import { nearest } from '@loopwright/line/check'
import type { Problem } from '../problems/problems.ts'
import { createReport, type Report } from '../problems/report.ts'
import { fileSchema } from '../schema/file.ts'
import { readSource } from '../text/source.ts'
import { RESERVED } from '../text/locate.ts'
import { findPair, keyText, putNode } from './putNode.ts'
import { graft, moved, stepInto, stepPath } from './graft.ts'

/** The text of a file with one of its variations put in. */
export interface Variation {
  /** the changed scenario, without its variations, comments kept; null if something is wrong */
  readonly text: string | null
  /** about the given text, in file order */
  readonly problems: readonly Problem[]
}

const FIXED = new Set(['format', 'variations'])
const STEP = /(?:^|\.)(?:"([^"]*)"|([^.[\]"]+))|\[(\d+)\]/y

/**
 * Steps of a path such as `stations.S5.zone`, `stations."S 1.2".zone` or `corners[0].lift`.
 *
 * @returns null if it is not a path
 * @example parsePath('corners[0].lift') // => ['corners', 0, 'lift']
 */
export function parsePath(path: string): (string | number)[] | null {
  const steps: (string | number)[] = []
  let at = 0
  while (at < path.length) {
    STEP.lastIndex = at
    const match = STEP.exec(path)
    if (match === null) return null
    const [whole, quoted, word, index] = match
    if (index !== undefined && steps.length === 0) return null
    steps.push(index !== undefined ? Number(index) : (quoted ?? word ?? ''))
    at += whole.length
  }
  return steps.length === 0 ? null : steps
}

/** What is wrong with where a path begins; null if nothing is. */
export function firstStep(path: string, steps: readonly (string | number)[]): say.Sentence | null {
  const known = Object.keys(fileSchema.shape).filter((key) => !FIXED.has(key))
  const first = String(steps[0])
  if (steps.includes(RESERVED)) return say.reservedKey(RESERVED)
  return known.includes(first) ? null : say.pathNowhere(path, first, nearest(first, known))
}

/** Checks the form of all variations of a file. */
export function checkVariations(root: Located, report: Report): void {
  for (const variation of root.entries.get('variations')?.value.entries.values() ?? []) {
    if (variation.key.includes(',')) addAtKey(report, variation, say.variationName(variation.key))
    for (const change of variation.value.entries.values()) {
      const steps = parsePath(change.key)
      const fault = steps === null ? say.badPath(change.key) : firstStep(change.key, steps)
      if (fault !== null) addAtKey(report, change, fault)
    }
  }
}

export function addAtKey(report: Report, entry: Entry, sentence: say.Sentence): void {
  report.addAt(entry.keyStart, entry.keyEnd - entry.keyStart, entry.value.path, sentence)
}

/**
 * The scenario with one of its variations applied, as text to read next.
 *
 * Values are put in by path; keys that are missing on the way are made. The name of the scenario gets the variation's name behind it.
 *
 * @param text  of the scenario file
 * @param name  of the variation
 * @example applyVariation(`${text}variations: { more: { carriers.count: 5 } }\n`, 'more').problems // => []
 */
export function applyVariation(text: string, name: string): Variation {
  const report = createReport(text)
  const root = readSource(text, report)
  if (root === null || report.hasErrors()) return { text: null, problems: report.problems() }
  return applyTo(root, text, name, report)
}

/**
 * The same for a file that is read already.
 *
 * @param root    what was read of it
 * @param report  takes what is wrong; without errors so far
 */
export function applyTo(root: Located, text: string, name: string, report: Report): Variation {
  const all = root.entries.get('variations')?.value
  const chosen = all?.entries.get(name)
  if (chosen === undefined) {
    const names = [...(all?.entries.keys() ?? [])]
    report.addAt(all?.start ?? 0, 1, 'variations', say.unknownVariation(name, nearest(name, names), names))
    return { text: null, problems: report.problems() }
  }
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false, schema: 'core' })
  const contents = document.contents
  if (!isMap(contents)) return { text: null, problems: report.problems() }
  for (const change of chosen.value.entries.values()) {
    const steps = parsePath(change.key)
    const nowhere = steps === null ? null : putNode(contents, steps, nodeOf(change.value))
    if (steps === null) addAtKey(report, change, say.badPath(change.key))
    else if (nowhere !== null) addAtKey(report, change, say.pathNowhere(change.key, String(nowhere), null))
  }
  if (report.hasErrors()) return { text: null, problems: report.problems() }
  contents.items = contents.items.filter((pair) => keyText(pair.key) !== 'variations')
  const title = findPair(contents, 'name')
  if (title !== undefined && isScalar(title.value)) title.value.value = `${String(title.value.value)}, ${name}`
  return { text: document.toString({ lineWidth: 0 }), problems: report.problems() }
}

/**
 * The tree of a file with one of its variations put in, as its text with the variation would be read; null where a path leads nowhere.
 *
 * @param root  of a text without references: where one value stands in two places, only the text tells what a change of one does to the other
 */
export function treeWith(root: Located, variation: Entry): Located | null {
  let tree: Located | null = { ...root, entries: new Map([...root.entries].filter(([key]) => key !== 'variations')) }
  for (const { key, keyStart, keyEnd, value } of variation.value.entries.values()) {
    const steps = parsePath(key)
    if (tree === null || steps === null || leadsThroughNothing(tree, steps)) return null
    tree = graft(tree, steps, { ...moved(value, steps.reduce(stepPath, '')), keyStart, keyEnd })
  }
  const name = tree?.entries.get('name')
  if (name === undefined || name.value.kind === 'map' || name.value.kind === 'list') return tree
  const titled: Located = { ...name.value, kind: 'text', value: `${String(name.value.value)}, ${variation.key}` }
  return { ...tree!, entries: new Map(tree!.entries).set('name', { ...name, value: titled }) }
}

/** A key with nothing behind it is a value: a path ends there. */
function leadsThroughNothing(tree: Located, steps: readonly (string | number)[]): boolean {
  let at: Located | undefined = tree
  for (const step of steps) {
    if (at?.kind === 'null') return true
    at = stepInto(at, step)
  }
  return false
}

/** A fresh node for a value, so that no anchor or comment comes along. */
function nodeOf(value: Located): Node {
  return new Document(plainValue(value)).contents as Node
}

function plainValue(value: Located): unknown {
  if (value.kind === 'list') return value.items.map(plainValue)
  if (value.kind !== 'map') return value.value
  return new Map([...value.entries].map(([key, entry]) => [key, plainValue(entry.value)]))
}
