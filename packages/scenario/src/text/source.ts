/**
 * Text to a tree of values that know their place. Guards first (size, depth), then the YAML parser, then our own tree,
 * whose making finds duplicate keys, foreign tags, references in circles and references that unfold without end.
 */
import { type Node, parseAllDocuments } from 'yaml'
import { DEPTH_MAX, measure } from './guard.ts'
import { describe, type Located } from './located.ts'
import * as say from '../problems/messages.ts'
import type { Report } from '../problems/report.ts'
import { createLocator } from './locate.ts'
import { yamlFaults } from './yamlFault.ts'

const CHARACTERS_MAX = 1_000_000
/** signs that begin or end a part; the parser's time grows with them */
const PARTS_MAX = 50_000

/**
 * Reads the text; null if there is no tree to go on with (then the report says why).
 *
 * @example readSource('a: 5', createReport('a: 5')).entries.get('a').value.value // => 5
 */
export function readSource(text: string, report: Report): Located | null {
  const documents = guarded(text, 0, '', report)
  if (documents === null) return null
  const [first, second] = documents
  for (const { at, length, sentence } of yamlFaults(first?.errors ?? [], text)) report.addAt(at, length, '', sentence)
  if ((first?.errors.length ?? 0) > 0) return null
  if (second !== undefined) return refuse(report, say.severalDocuments(), second.range?.[0] ?? 0)
  const contents = first?.contents ?? null
  if (contents === null) return refuse(report, say.notAMap('an empty file'), 0)
  const locator = createLocator(report)
  const tree = locator.locate(contents as Node, '', 0)
  if (locator.isBomb()) return null
  if (tree.broken === true) return null
  if (tree.kind !== 'map') {
    report.add(tree, say.notAMap(describe(tree)))
    return null
  }
  return tree
}

/** The parsed text; null if it is more than the parser should be given, or can take. */
function guarded(text: string, at: number, path: string, report: Report): ReturnType<typeof parse> {
  if (text.length > CHARACTERS_MAX) return refuse(report, say.tooLarge(text.length, CHARACTERS_MAX), at, path)
  const guard = measure(text)
  if (guard.depth > DEPTH_MAX) return refuse(report, say.tooDeep(DEPTH_MAX), at + guard.deepestAt, path)
  if (guard.parts > PARTS_MAX) return refuse(report, say.tooManyParts(PARTS_MAX), at, path)
  return parse(text) ?? refuse(report, say.tooDeep(DEPTH_MAX), at, path)
}

/**
 * One value by itself, read as a file would read it.
 *
 * @param at    where it begins in the text of the report
 * @param path  that it is to have
 * @returns     null if there is no value to go on with; the report says why
 */
export function readValue(text: string, at: number, path: string, report: Report): Located | null {
  const documents = guarded(text, at, path, report)
  if (documents === null) return null
  const [first, second] = documents
  const [fault] = yamlFaults(first?.errors ?? [], text)
  if (fault !== undefined) {
    report.addAt(at + fault.at, fault.length, path, fault.sentence)
    return null
  }
  if (second !== undefined) return refuse(report, say.severalDocuments(), at + (second.range?.[0] ?? 0), path)
  const locator = createLocator(report, at)
  const tree = locator.locate((first?.contents ?? null) as Node | null, path, 0)
  return locator.isBomb() || tree.broken === true ? null : tree
}

function refuse(report: Report, sentence: say.Sentence, at: number, path = ''): null {
  report.addAt(at, 1, path, sentence)
  return null
}

function parse(text: string) {
  // of a spoilt text the parser makes thousands of errors, of which a few are told: their stacks, which nobody sees, would take most of the time
  const { stackTraceLimit } = Error
  Error.stackTraceLimit = 0
  try {
    const documents = parseAllDocuments(text, { uniqueKeys: false, prettyErrors: false, merge: false, version: '1.2', schema: 'core' })
    if ('empty' in documents) return []
    return documents.some((document) => document.errors.some((finding) => finding.message.includes('call stack'))) ? null : documents
  } catch {
    return null
  } finally {
    Error.stackTraceLimit = stackTraceLimit
  }
}
