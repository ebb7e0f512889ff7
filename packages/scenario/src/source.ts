/**
 * Text to a tree of values that know their place. Guards first (size, depth), then the YAML parser, then our own walk,
 * which finds duplicate keys, foreign tags, references in circles and references that unfold without end.
 */
import {
  type Alias,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseAllDocuments,
  Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml'
import * as say from './messages.ts'
import type { Report } from './report.ts'

export type Kind = 'map' | 'list' | 'text' | 'number' | 'boolean' | 'null'

/** A value of the file and where it stands. Offsets count characters of the whole text. */
export interface Located {
  readonly kind: Kind
  /** of a scalar; null for maps and lists */
  readonly value: string | number | boolean | null
  /** a scalar as it was written */
  readonly source: string
  readonly path: string
  readonly start: number
  readonly end: number
  /** of its own key, where it stands in a map */
  readonly keyStart?: number
  readonly keyEnd?: number
  /** where the first character of a text stands, if columns inside it can be told */
  readonly textStart: number | null
  readonly entries: ReadonlyMap<string, Entry>
  readonly items: readonly Located[]
  /** nothing could be read here, and why is reported: no more about it */
  readonly broken?: true
}

export interface Entry {
  readonly key: string
  readonly keyStart: number
  readonly keyEnd: number
  readonly value: Located
}

const CHARACTERS_MAX = 1_000_000
/** signs that begin or end a part; the parser's time grows with them */
const PARTS_MAX = 60_000
const DEPTH_MAX = 64
/** of the parser; one slip often causes several */
const FINDINGS_MAX = 10
const ALIAS_VALUES_MAX = 10_000
const NO_ENTRIES: ReadonlyMap<string, Entry> = new Map()

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

/** Brackets and dashes counted without parsing; quotes are not looked at, which a scenario never comes near. */
function measure(text: string): { depth: number; deepestAt: number; parts: number } {
  let open = 0
  let depth = 0
  let deepestAt = 0
  let parts = 0
  let run = 0
  let leading = true
  const note = (level: number, at: number): void => {
    if (level > depth) {
      depth = level
      deepestAt = at
    }
  }
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!
    if (sign === '[' || sign === '{') note(++open + run, at)
    else if (sign === ']' || sign === '}') open = Math.max(0, open - 1)
    if (sign === '\n') {
      run = 0
      leading = true
    } else if (leading && (sign === '-' || sign === '?')) note(++run + open, at)
    else if (sign !== ' ' && sign !== '\t') leading = false
    if (PART.has(sign)) parts++
  }
  return { depth, deepestAt, parts }
}

const PART = new Set('[]{},:\n"\'#&*!|>')

/** What was found, for a sentence: `the number 5`, `a list`. */
export function describe(located: Located): string {
  if (located.kind === 'map') return 'a set of keys'
  if (located.kind === 'list') return 'a list'
  if (located.kind === 'null') return 'nothing'
  if (located.kind === 'number') return `the number ${located.source.slice(0, 40)}`
  if (located.kind === 'boolean') return `"${located.source}"`
  return `the text "${String(located.value).slice(0, 60)}"`
}

/** One step of a path, quoted where a name would be misread. */
export function joinPath(path: string, key: string): string {
  const step = /["[\]]|\./.test(key) || key === '' ? `"${key.replaceAll('"', '')}"` : key
  return path === '' ? step : `${path}.${step}`
}

function createWalk(report: Report): { walk(node: Node | null, path: string, depth: number): Located; isBomb(): boolean } {
  const anchors = new Map<string, Node>()
  const open = new Set<Node>()
  let unfolded = 0
  let insideAlias = 0

  const span = (node: Node | null, fallback: number): [number, number] => [node?.range?.[0] ?? fallback, node?.range?.[1] ?? fallback]

  function scalar(node: Scalar, path: string): Located {
    const [start, end] = span(node, 0)
    const source = node.source ?? ''
    const value = node.value
    const kind: Kind =
      typeof value === 'string'
        ? 'text'
        : typeof value === 'number' || typeof value === 'bigint'
          ? 'number'
          : typeof value === 'boolean'
            ? 'boolean'
            : 'null'
    const quoted = node.type === Scalar.QUOTE_DOUBLE || node.type === Scalar.QUOTE_SINGLE
    const verbatim = kind === 'text' && source === value && end - start === source.length + (quoted ? 2 : 0)
    return {
      kind,
      value: kind === 'number' ? Number(value) : (value as string | boolean | null),
      source,
      path,
      start,
      end,
      textStart: verbatim ? start + (quoted ? 1 : 0) : null,
      entries: NO_ENTRIES,
      items: [],
    }
  }

  function alias(node: Alias, path: string, depth: number): Located {
    const [start, end] = span(node, 0)
    const target = anchors.get(node.source)
    if (target === undefined) {
      report.addAt(start, end - start, path, say.aliasUnknown(node.source))
      return broken(path, start)
    }
    if (open.has(target)) {
      report.addAt(start, end - start, path, say.aliasCycle(node.source))
      return broken(path, start)
    }
    insideAlias++
    const value = walk(target, path, depth)
    insideAlias--
    return value
  }

  function keyOf(pair: Pair, path: string): { key: string; start: number; end: number; plain: boolean } | null {
    const node = pair.key as Node | null
    const [start, end] = span(node, span(pair.value as Node | null, 0)[0])
    if (!isScalar(node) || node.value === null || node.value === undefined) {
      report.addAt(start, Math.max(1, end - start), path, say.keyNotText())
      return null
    }
    if (node.anchor !== undefined) anchors.set(node.anchor, node)
    const key = typeof node.value === 'string' ? node.value : (node.source ?? String(node.value))
    return { key, start, end, plain: node.type === Scalar.PLAIN }
  }

  function merge(into: Map<string, Entry>, value: Located): void {
    for (const source of value.kind === 'list' ? value.items : [value]) {
      if (source.kind !== 'map' && source.broken !== true) report.add(source, say.wrongType('a set of keys to merge', describe(source)))
      for (const entry of source.entries.values()) if (!into.has(entry.key)) into.set(entry.key, entry)
    }
  }

  function map(node: YAMLMap, path: string, depth: number): Located {
    const [start, end] = span(node, 0)
    const entries = new Map<string, Entry>()
    const merged: Located[] = []
    let before: Entry | null = null
    for (const pair of node.items) {
      if (!isPair(pair)) continue
      const key = keyOf(pair, path)
      if (key === null) continue
      const inner = joinPath(path, key.key)
      if (key.key === '<<' && key.plain) {
        merged.push(walk(pair.value as Node | null, path, depth + 1))
        continue
      }
      if (before !== null && pair.value === null && isTornDecimal(before.value, key.key)) {
        const { value } = before
        report.addAt(
          value.start,
          key.end - value.start,
          value.path,
          say.decimalComma(`${value.source},${key.key}`, `${value.source}.${key.key}`),
        )
        entries.set(before.key, {
          ...before,
          value: { ...broken(value.path, value.start), keyStart: before.keyStart, keyEnd: before.keyEnd },
        })
        continue
      }
      const earlier = entries.get(key.key)
      if (earlier !== undefined) {
        report.addAt(key.start, key.end - key.start, inner, say.duplicateKey(key.key, report.lineOf(earlier.keyStart)))
        continue
      }
      const value = walk(pair.value as Node | null, inner, depth + 1)
      before = { key: key.key, keyStart: key.start, keyEnd: key.end, value: { ...value, keyStart: key.start, keyEnd: key.end } }
      entries.set(key.key, before)
    }
    for (const value of merged) merge(entries, value)
    return { kind: 'map', value: null, source: '', path, start, end, textStart: null, entries, items: [] }
  }

  function list(node: YAMLSeq, path: string, depth: number): Located {
    const [start, end] = span(node, 0)
    const items = node.items.map((item, i) => walk(item as Node | null, `${path}[${i}]`, depth + 1))
    return { kind: 'list', value: null, source: '', path, start, end, textStart: null, entries: NO_ENTRIES, items }
  }

  function walk(node: Node | null, path: string, depth: number): Located {
    if (node === null) return nothing(path, 0)
    const [start] = span(node, 0)
    if (insideAlias > 0 && ++unfolded > ALIAS_VALUES_MAX) {
      if (unfolded === ALIAS_VALUES_MAX + 1) report.addAt(start, 1, path, say.aliasBomb(ALIAS_VALUES_MAX))
      return broken(path, start)
    }
    if (isAlias(node)) return alias(node, path, depth)
    if (depth > DEPTH_MAX) {
      report.addAt(start, 1, path, say.tooDeep(DEPTH_MAX))
      return broken(path, start)
    }
    const tagged = node as Node & { anchor?: string; tag?: string }
    if (tagged.anchor !== undefined) anchors.set(tagged.anchor, node)
    if (tagged.tag !== undefined) {
      report.addAt(start, 1, path, say.foreignTag(tagged.tag))
      return broken(path, start)
    }
    if (isScalar(node)) return scalar(node, path)
    open.add(node)
    const result = isMap(node) ? map(node, path, depth) : isSeq(node) ? list(node, path, depth) : broken(path, start)
    open.delete(node)
    return result
  }
  return { walk, isBomb: () => unfolded > ALIAS_VALUES_MAX }
}

/** In `{ speed: 12,5 m/min }` the comma ends the value, and `5 m/min` becomes a key without a value. */
function isTornDecimal(before: Located, key: string): boolean {
  return before.kind === 'number' && /^-?\d+$/.test(before.source) && /^\d/.test(key)
}

function broken(path: string, at: number): Located {
  return { ...nothing(path, at), broken: true }
}

function nothing(path: string, at: number): Located {
  return { kind: 'null', value: null, source: '', path, start: at, end: at, textStart: null, entries: NO_ENTRIES, items: [] }
}

/** The plain value, for the shape check. Maps have no prototype, so that any key is just a key. */
export function plain(located: Located): unknown {
  if (located.kind === 'map') {
    const object = Object.create(null) as Record<string, unknown>
    for (const [key, entry] of located.entries) object[key] = plain(entry.value)
    return object
  }
  return located.kind === 'list' ? located.items.map(plain) : located.value
}
