/** The shape check: zod decides, this file turns its issues into located sentences of ours. */
import { nearest } from '@loopwright/line/check'
import { distributionKinds } from '@loopwright/stats'
import type { z } from 'zod'
import { describe, joinPath, type Located, plain } from './located.ts'
import * as say from '../problems/messages.ts'
import { type Dimension, proposals } from './quantity.ts'
import type { Report } from '../problems/report.ts'
import { fileSchema } from '../schema/file.ts'
import { EXPECTED, type Expected, knownBeside } from '../schema/words.ts'

type Issue = z.core.$ZodIssue

/** Reports all that does not fit the schema. */
export function checkShape(root: Located, report: Report): void {
  const result = fileSchema.safeParse(plain(root))
  for (const issue of result.error?.issues ?? []) {
    if (report.isFull()) return
    translate(issue, root, report, root)
  }
}

function translate(issue: Issue, from: Located, report: Report, root: Located): void {
  const { at, rest } = find(from, issue.path)
  if (at.broken === true) return
  if (rest.length > 0) {
    const key = String(rest[0])
    if (rest.length === 1) report.add({ ...at, path: joinPath(at.path, key) }, say.missing(key, expectedBy(issue)))
  } else if (issue.code === 'unrecognized_keys') unknownKeys(issue, at, report)
  else if (issue.code === 'invalid_union') union(issue, at, report, root)
  else report.add(at, mismatch(issue, at, root))
}

/** The sentence about a single value that is not of the kind that is wanted. */
function mismatch(issue: Issue, at: Located, root: Located): say.Sentence {
  const tag = tagOf(issue)
  if (at.kind === 'null') return say.wrongType(expectedBy(issue), 'nothing')
  if (issue.code === 'invalid_value') return notOneOf(issue.values.map(String), at)
  if (issue.code === 'too_small') return say.tooSmall(at.source, Number(issue.minimum))
  if (issue.code === 'too_big') return say.tooBig(at.source, Number(issue.maximum))
  if (at.kind === 'number' && !Number.isFinite(at.value)) return say.notFinite(at.source)
  if (at.kind === 'number' && isDimension(tag)) return say.bareNumber(at.source, proposals(at.source, dimensionOf(tag)))
  if (at.kind === 'number' && tag === 'count') return say.notWhole(at.source)
  const name = tag === 'name' ? likelyName(at, root) : null
  return say.wrongType(`${expectedBy(issue)}${name === null ? '' : `, such as "${name}"`}`, describe(at))
}

/** where a station is named, and where a zone is */
const OF_STATION = /^operators\.|(^|\.)(stations?|forStation|push|pull|between)(\[\d+\])?$/
const OF_ZONE = /(^|\.)(zones?|start|from|to|priority)(\[\d+\])?$/

/** Of a number where a name should be: the part that has it behind its letters, such as Z01 of 1; null: none is known. */
function likelyName(at: Located, root: Located): string | null {
  if (!/^\d+$/.test(at.source)) return null
  const number = Number(at.source)
  const ofKey = (key: string): readonly string[] => [...(root.entries.get(key)?.value.entries.keys() ?? [])]
  const ends = (name: string): boolean => Number(/\d+$/.exec(name)?.[0] ?? Number.NaN) === number
  if (OF_STATION.test(at.path)) return ofKey('stations').find(ends) ?? null
  if (!OF_ZONE.test(at.path)) return null
  const loop = /^\s*(\d+)\s+zones\b/.exec(root.entries.get('loop')?.value.source ?? '')?.[1]
  if (loop === undefined || number < 1 || number > Number(loop)) return ofKey('zones').find(ends) ?? null
  return `Z${at.source.replace(/^0+/, '').padStart(Math.max(2, loop.length), '0')}`
}

function unknownKeys(issue: Extract<Issue, { code: 'unrecognized_keys' }>, at: Located, report: Report): void {
  const known = knownBeside(issue.keys)
  // zod settles for the branch without `kind` where no kind fits
  for (const key of issue.keys) {
    const entry = at.entries.get(key)
    if (entry === undefined || report.isFull()) continue
    if (key === 'kind' && entry.value.kind === 'text') {
      report.add(
        entry.value,
        notOneOf(
          distributionKinds().map((each) => each.kind),
          entry.value,
        ),
      )
      continue
    }
    const meant = key.slice(0, key.indexOf(':'))
    if (key.includes(':') && known.includes(meant)) {
      report.addAt(entry.keyStart, meant.length + 1, joinPath(at.path, meant), say.blankAfterColon(meant))
      continue
    }
    report.addAt(entry.keyStart, entry.keyEnd - entry.keyStart, joinPath(at.path, key), say.unknownKey(key, nearest(key, known), known))
  }
}

/** A union: the branch that was meant is the one of the right type with the fewest findings. */
function union(issue: Extract<Issue, { code: 'invalid_union' }>, at: Located, report: Report, root: Located): void {
  if ('discriminator' in issue && issue.errors.length === 0) {
    const known = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : []
    report.add(at, notOneOf(known, at))
    return
  }
  const meant = branchesOf(issue).toSorted((a, b) => weight(a, at) - weight(b, at))[0]
  if (meant !== undefined) {
    for (const inner of meant) translate(inner, at, report, root)
    return
  }
  const words = issue.errors.flat().filter((inner) => inner.code === 'invalid_value')
  if (at.kind === 'text' && words.length > 0)
    report.add(
      at,
      notOneOf(
        words.flatMap((inner) => inner.values.map(String)),
        at,
      ),
    )
  else report.add(at, mismatch(issue, at, root))
}

/** Branches whose type fits the value. */
function branchesOf(issue: Extract<Issue, { code: 'invalid_union' }>): Issue[][] {
  return issue.errors.filter((errors) => !errors.some((inner) => inner.path.length === 0 && isMismatch(inner)))
}

/** The value is of another type than this branch wants. */
function isMismatch(issue: Issue): boolean {
  return (
    issue.code === 'invalid_type' ||
    issue.code === 'invalid_value' ||
    (issue.code === 'invalid_union' &&
      !('discriminator' in issue) &&
      issue.errors.every((errors) => errors.some((inner) => inner.path.length === 0 && isMismatch(inner))))
  )
}

function weight(errors: readonly Issue[], at: Located): number {
  let sum = 0
  for (const issue of errors) {
    if (issue.code === 'unrecognized_keys') sum += 2 * issue.keys.length
    else if (issue.code === 'invalid_union' && 'discriminator' in issue && issue.errors.length === 0) sum += at.entries.has('kind') ? 0 : 4
    else if (issue.code === 'invalid_union') {
      const inside = find(at, issue.path).at
      const branches = branchesOf(issue).map((inner) => weight(inner, inside))
      sum += branches.length === 0 ? 0.5 : Math.min(...branches)
    } else sum += issue.path.length > 0 && !at.entries.has(String(issue.path[0])) ? 1 : 0.5
  }
  return sum
}

function notOneOf(known: readonly string[], at: Located): say.Sentence {
  const found = at.kind === 'text' ? String(at.value) : at.source === '' ? describe(at) : at.source
  return known.length === 1 && known[0] === '1' ? say.formatUnknown(found) : say.notAChoice(found, nearest(found, known), known)
}

/** Goes down the path as far as it exists. */
function find(from: Located, path: readonly PropertyKey[]): { at: Located; rest: PropertyKey[] } {
  let at = from
  for (let i = 0; i < path.length; i++) {
    const step = path[i]!
    const next = typeof step === 'number' ? at.items[step] : at.entries.get(String(step))?.value
    if (next === undefined) return { at, rest: path.slice(i) }
    at = next
  }
  return { at, rest: [] }
}

function tagOf(issue: Issue): Expected | null {
  const word = issue.message.startsWith('@') ? issue.message.slice(1) : ''
  return Object.hasOwn(EXPECTED, word) ? (word as Expected) : null
}

function expectedBy(issue: Issue): string {
  const tag = tagOf(issue)
  if (tag !== null) return EXPECTED[tag]
  if (issue.code === 'invalid_value') return say.choices(issue.values.map(String))
  if (issue.code === 'invalid_union' && 'options' in issue && Array.isArray(issue.options))
    return say.choices(issue.options.map(String), 20)
  return 'a value'
}

function isDimension(tag: Expected | null): tag is Dimension | 'distribution' | 'taskTime' | 'timeByVariant' {
  return (
    tag === 'duration' ||
    tag === 'length' ||
    tag === 'speed' ||
    tag === 'acceleration' ||
    tag === 'distribution' ||
    tag === 'taskTime' ||
    tag === 'timeByVariant'
  )
}

function dimensionOf(tag: Dimension | 'distribution' | 'taskTime' | 'timeByVariant'): Dimension {
  return tag === 'distribution' || tag === 'taskTime' || tag === 'timeByVariant' ? 'duration' : tag
}
