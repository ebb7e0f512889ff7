/** From the parser's nodes to our tree: finds duplicate keys, foreign tags, references in circles and references that unfold without end. */
import { type Alias, isAlias, isMap, isPair, isScalar, isSeq, type Node, type Pair, Scalar, type YAMLMap, type YAMLSeq } from 'yaml'
import { DEPTH_MAX } from './guard.ts'
import { describe, type Entry, joinPath, type Kind, type Located } from './located.ts'
import * as say from '../problems/messages.ts'
import type { Report } from '../problems/report.ts'

const ALIAS_VALUES_MAX = 10_000
/** a key that JavaScript gives a meaning of its own */
export const RESERVED = '__proto__'
const NO_ENTRIES: ReadonlyMap<string, Entry> = new Map()

/** @param base  added to every offset, where the text that was parsed is a part of a longer one */
export function createLocator(
  report: Report,
  base = 0,
): { locate(node: Node | null, path: string, depth: number): Located; isBomb(): boolean } {
  const anchors = new Map<string, Node>()
  const open = new Set<Node>()
  let unfolded = 0
  let insideAlias = 0

  const span = (node: Node | null, fallback: number): [number, number] =>
    node?.range ? [node.range[0] + base, node.range[1] + base] : [fallback, fallback]

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
    const value = locate(target, path, depth)
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
      if (key.key === RESERVED) {
        report.addAt(key.start, key.end - key.start, inner, say.reservedKey(key.key))
        continue
      }
      if (key.key === '<<' && key.plain) {
        merged.push(locate(pair.value as Node | null, path, depth + 1))
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
      const value = locate(pair.value as Node | null, inner, depth + 1)
      before = { key: key.key, keyStart: key.start, keyEnd: key.end, value: { ...value, keyStart: key.start, keyEnd: key.end } }
      entries.set(key.key, before)
    }
    for (const value of merged) merge(entries, value)
    return { kind: 'map', value: null, source: '', path, start, end, textStart: null, entries, items: [] }
  }

  function list(node: YAMLSeq, path: string, depth: number): Located {
    const [start, end] = span(node, 0)
    const items = node.items.map((item, i) => locate(item as Node | null, `${path}[${i}]`, depth + 1))
    return { kind: 'list', value: null, source: '', path, start, end, textStart: null, entries: NO_ENTRIES, items }
  }

  function locate(node: Node | null, path: string, depth: number): Located {
    if (node === null) return nothing(path, base)
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
      report.addAt(start, 1, path, say.foreignTag(tagged.tag.replace('tag:yaml.org,2002:', '!!')))
      return broken(path, start)
    }
    if (isScalar(node)) return scalar(node, path)
    open.add(node)
    const result = isMap(node) ? map(node, path, depth) : isSeq(node) ? list(node, path, depth) : broken(path, start)
    open.delete(node)
    return result
  }
  return { locate, isBomb: () => unfolded > ALIAS_VALUES_MAX }
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
