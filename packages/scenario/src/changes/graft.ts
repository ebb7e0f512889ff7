/** A tree of values with one of them exchanged: the tree itself stays as it is. */
import { type Entry, joinPath, type Located } from '../text/located.ts'

/** A path, one step further. */
export function stepPath(path: string, step: string | number): string {
  return typeof step === 'number' ? `${path}[${step}]` : joinPath(path, step)
}

/** The value one step down; undefined where there is none. */
export function stepInto(at: Located | undefined, step: string | number): Located | undefined {
  return typeof step === 'number' ? at?.items[step] : at?.entries.get(step)?.value
}

/** The tree with a value put in; null where the path leads through something that has no such place. */
export function graft(at: Located, steps: readonly (string | number)[], value: Located, path = ''): Located | null {
  const [step, ...rest] = steps
  if (step === undefined) return value
  const inner = stepPath(path, step)
  if (typeof step === 'number') {
    const item = at.items[step]
    const changed = item === undefined ? null : graft(item, rest, value, inner)
    return changed === null ? null : { ...at, items: at.items.with(step, changed) }
  }
  const made: Located = { ...value, kind: 'map', value: null, source: '', path: inner, textStart: null, entries: new Map(), items: [] }
  if (at.kind !== 'map') return null
  const entry = at.entries.get(step)
  const there = entry === undefined || entry.value.kind === 'null' ? made : entry.value
  const changed = graft(there, rest, value, inner)
  if (changed === null) return null
  const key: Entry =
    rest.length > 0 && entry !== undefined
      ? { ...entry, value: changed }
      : { key: step, keyStart: value.keyStart!, keyEnd: value.keyEnd!, value: changed }
  return { ...at, entries: new Map(at.entries).set(step, key) }
}

/** The same value as it stands at another path: what is found in it is told there. */
export function moved(value: Located, path: string): Located {
  const entries = new Map([...value.entries].map(([key, entry]) => [key, { ...entry, value: moved(entry.value, stepPath(path, key)) }]))
  return { ...value, path, entries, items: value.items.map((item, index) => moved(item, stepPath(path, index))) }
}
