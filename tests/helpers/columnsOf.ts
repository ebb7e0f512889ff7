/** A line while it runs, taken apart into its columns: for what must hold for each of them, whatever is added. */
import type { Line } from '../../packages/line/src/state/line.ts'
import type { WorkList } from '../../packages/line/src/state/lists.ts'

/** Objects of the line by the way to them; what is no column of its own (the file's text, the queue, generators) is left out. */
export function objectsOf(line: Line): [string, object][] {
  const found: [string, object][] = []
  const seen = new Set<unknown>([line.spec, line.queue, line.draws.streams, line.draws.samplers])
  const look = (at: string, value: unknown): void => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return
    seen.add(value)
    if (!ArrayBuffer.isView(value)) {
      found.push([at, value])
      for (const [key, inner] of Object.entries(value)) look(`${at}.${key}`, inner)
    }
  }
  look('line', line)
  return found
}

/** What is written before it is read, and so stands as a run left it. */
const SCRATCH = /\.(due|left|drawn|taskUniforms|taskRoom|outputs\.values|since)$/

export function valuesOf(line: Line): Map<string, unknown> {
  const values = new Map<string, unknown>()
  for (const [at, object] of objectsOf(line)) {
    for (const [key, value] of Object.entries(object)) {
      if (typeof value === 'object' && !ArrayBuffer.isView(value)) continue
      const name = `${at}.${key}`
      if (isScratch(name)) continue
      // of a list that grows and shrinks only what is in it
      values.set(name, key === 'items' && 'isIn' in object ? (value as Int32Array).slice(0, (object as WorkList).length) : value)
    }
  }
  return values
}

const scratch = new Map<string, boolean>()
function isScratch(name: string): boolean {
  const known = scratch.get(name) ?? SCRATCH.test(name)
  scratch.set(name, known)
  return known
}

/** Names of those that are not the same. */
export const differing = (one: ReadonlyMap<string, unknown>, other: ReadonlyMap<string, unknown>): string[] =>
  [...one.keys()].filter((name) => !areEqual(one.get(name), other.get(name)))

/** As text they are the same; most are so number by number, which is told sooner. */
const areEqual = (one: unknown, other: unknown): boolean =>
  Object.is(one, other) || haveEqual(one, other) || JSON.stringify(one) === JSON.stringify(other)

function haveEqual(one: unknown, other: unknown): boolean {
  if (!isList(one) || !isList(other) || one.length !== other.length) return false
  for (let k = 0; k < one.length; k++)
    if (typeof one[k] === 'object' ? one[k] !== null || other[k] !== null : !Object.is(one[k], other[k])) return false
  return true
}

const isList = (value: unknown): value is ArrayLike<unknown> =>
  Array.isArray(value) || (ArrayBuffer.isView(value) && !(value instanceof DataView))
