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
  return new Map(
    objectsOf(line).flatMap(([at, object]) =>
      Object.entries(object).flatMap(([key, value]): [string, unknown][] => {
        const name = `${at}.${key}`
        if (SCRATCH.test(name)) return []
        // of a list that grows and shrinks only what is in it
        if (key === 'items' && 'isIn' in object) return [[name, (value as Int32Array).slice(0, (object as unknown as WorkList).length)]]
        return ArrayBuffer.isView(value) || typeof value !== 'object' ? [[name, value]] : []
      }),
    ),
  )
}

/** Names of those that are not the same. */
export const differing = (one: ReadonlyMap<string, unknown>, other: ReadonlyMap<string, unknown>): string[] =>
  [...one.keys()].filter((name) => JSON.stringify(one.get(name)) !== JSON.stringify(other.get(name)))
