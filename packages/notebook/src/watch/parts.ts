/** The parts of a notebook that is being written, one for each step: what each tells, and whether that still holds. Data in, data out. */
import { createHash } from 'node:crypto'
import type { Cell } from '../cells/cell.ts'
import type { StepMark } from '../load/steps.ts'

/** `fresh`: what it tells is of its present inputs; `stale`: of earlier ones. */
export type PartState = 'fresh' | 'stale' | 'running' | 'failed' | 'waiting'

export interface Part {
  /** of its text and of all that it depends on */
  readonly key: string
  /** null: the whole body, where it could not be split */
  readonly mark: StepMark | null
  readonly cells: readonly Cell[]
  readonly state: PartState
}

const digest = (...texts: readonly string[]): string => {
  const hash = createHash('sha256')
  for (const text of texts) hash.update(`${text.length}:`).update(text)
  return hash.digest('hex').slice(0, 16)
}

/**
 * A key for each step: equal to that of an earlier run exactly where nothing that the step depends on has changed.
 *
 * @param marks   of the steps, in their order
 * @param text    of the notebook
 * @param others  what every step depends on: texts of the scenario, of its tables, of what the notebook imports
 */
export function keysOf(marks: readonly StepMark[], text: string, others: readonly string[]): string[] {
  const lines = text.split(/\r?\n/)
  const ofSteps = new Set(marks.flatMap(({ line, endLine }) => Array.from({ length: endLine - line + 1 }, (_, index) => line - 1 + index)))
  const outside = lines.filter((_, index) => !ofSteps.has(index)).join('\n')
  const base = digest(outside, ...others)
  const givers = new Map<string, string>()
  return marks.map(({ line, endLine, gives, uses }) => {
    const key = digest(base, lines.slice(line - 1, endLine).join('\n'), ...[...gives, ...uses].map((name) => givers.get(name) ?? ''))
    for (const name of gives) givers.set(name, key)
    return key
  })
}

/**
 * The parts of a notebook that is about to be run again: those with the keys of fresh ones are fresh, all others show what they told before.
 *
 * @param marks  empty: the body is one part
 */
export function plannedParts(marks: readonly StepMark[], keys: readonly string[], before: readonly Part[]): Part[] {
  if (marks.length === 0) return [{ key: '', mark: null, cells: before.flatMap(({ cells }) => cells), state: 'stale' }]
  const used = new Set<number>()
  const same = keys.map((key) => {
    const at = before.findIndex((part, index) => part.key === key && !used.has(index))
    if (at >= 0) used.add(at)
    return at
  })
  let last = -1
  return marks.map((mark, index) => {
    const key = keys[index]!
    const old = before[same[index]!]
    if (old !== undefined) {
      last = same[index]!
      return { key, mark, cells: old.cells, state: old.state === 'fresh' ? 'fresh' : 'stale' }
    }
    // a changed one stands where the one that it was stood: behind what comes before it
    const next = last + 1
    if (next >= before.length || used.has(next)) return { key, mark, cells: [], state: 'stale' }
    last = next
    used.add(next)
    return { key, mark, cells: before[next]!.cells, state: 'stale' }
  })
}

/** All cells in the order of the notebook; an older one gives way to a newer one of the same id. */
export function cellsOf(parts: readonly Part[]): Cell[] {
  const fresh = new Set(parts.flatMap(({ state, cells }) => (state === 'stale' ? [] : cells.map(({ id }) => id))))
  const seen = new Set<string>()
  return parts.flatMap(({ state, cells }) =>
    cells.filter(({ id }) => {
      if (seen.has(id) || (state === 'stale' && fresh.has(id))) return false
      seen.add(id)
      return true
    }),
  )
}
