/**
 * Text to a tree of values that know their place. Guards first (size, depth), then the YAML parser, then our own walk,
 * which finds duplicate keys, foreign tags, references in circles and references that unfold without end.
 */
import { type Node, parseAllDocuments } from 'yaml'
import { DEPTH_MAX, measure } from './guard.ts'
import { describe, type Located } from './located.ts'
import * as say from './messages.ts'
import type { Report } from './report.ts'
import { createWalk } from './walk.ts'

const CHARACTERS_MAX = 1_000_000
/** signs that begin or end a part; the parser's time grows with them */
const PARTS_MAX = 50_000
/** of the parser; one slip often causes several */
const FINDINGS_MAX = 10

/** Reads the text; null if there is no tree to go on with (then the report says why). */
export function readSource(text: string, report: Report): Located | null {
  if (text.length > CHARACTERS_MAX) return refuse(report, say.tooLarge(text.length, CHARACTERS_MAX), 0)
  const guard = measure(text)
  if (guard.depth > DEPTH_MAX) return refuse(report, say.tooDeep(DEPTH_MAX), guard.deepestAt)
  if (guard.parts > PARTS_MAX) return refuse(report, say.tooManyParts(PARTS_MAX), 0)
  const documents = parse(text)
  if (documents === null) return refuse(report, say.tooDeep(DEPTH_MAX), 0)
  const [first, second] = documents
  for (const finding of first?.errors.slice(0, FINDINGS_MAX) ?? []) {
    const isTab = finding.code === 'TAB_AS_INDENT'
    report.addAt(finding.pos[0], finding.pos[1] - finding.pos[0], '', say.badYaml(reason(finding.message), isTab))
  }
  if ((first?.errors.length ?? 0) > 0) return null
  if (second !== undefined) return refuse(report, say.severalDocuments(), second.range?.[0] ?? 0)
  const contents = first?.contents ?? null
  if (contents === null) return refuse(report, say.notAMap('an empty file'), 0)
  const walk = createWalk(report)
  const tree = walk.walk(contents as Node, '', 0)
  if (walk.isBomb()) return null
  if (tree.broken === true) return null
  if (tree.kind !== 'map') {
    report.add(tree, say.notAMap(describe(tree)))
    return null
  }
  return tree
}

function refuse(report: Report, sentence: say.Sentence, at: number): null {
  report.addAt(at, 1, '', sentence)
  return null
}

function parse(text: string) {
  try {
    const documents = parseAllDocuments(text, { uniqueKeys: false, prettyErrors: false, merge: false, version: '1.2', schema: 'core' })
    if ('empty' in documents) return []
    return documents.some((document) => document.errors.some((finding) => finding.message.includes('call stack'))) ? null : documents
  } catch {
    return null
  }
}

/** The parser's own words, without its second sentence and in small letters. */
function reason(message: string): string {
  const first = message.split('\n')[0]!.slice(0, 120)
  return first.charAt(0).toLowerCase() + first.slice(1)
}
