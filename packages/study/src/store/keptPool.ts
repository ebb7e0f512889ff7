/** A pool that keeps what its threads find out, and asks them only what is not kept. It lies below every study, so that none needs to know of it. */
import type { LineSpec } from '@loopwright/line'
import type { Pool } from '../runs/pool.ts'
import { type Kept, NOTHING, type Task, type TaskResult } from '../runs/task.ts'
import { type Form, formOf } from './forms.ts'
import { runKey } from './runKey.ts'
import type { Store } from './store.ts'

/** What is known of one line, number of carriers, seed and form. */
interface Known {
  readonly key: string
  readonly form: Form<unknown>
  readonly items: Map<number, unknown>
  /** replications below this may have been handed over, and are read again when they are asked for again */
  handedTo: number
}

/**
 * The pool with a store in front. Traces are not kept.
 *
 * @param pool  its threads; closing one closes the other
 */
export function keptPool(pool: Pool, store: Store): Pool {
  const specs = new Map<number, LineSpec>()
  const all = new Map<string, Known>()
  let recalled = 0
  const known = (task: Task & { want: Kept }): Known => {
    const place = JSON.stringify([task.line, task.carriers, task.seed, task.want])
    const before = all.get(place)
    const kept = before === undefined || task.from < before.handedTo ? recall(store, specs.get(task.line)!, task) : before
    all.set(place, kept)
    return kept
  }
  return {
    size: pool.size,
    depth: pool.depth,
    get recalled() {
      return recalled
    },
    line(spec) {
      const line = pool.line(spec)
      specs.set(line, spec)
      return line
    },
    ...(pool.chunkOf === undefined ? {} : { chunkOf: (task) => pool.chunkOf!(task) }),
    start: () => pool.start(),
    async run(thread, task) {
      if (task.want === 'traces') return await pool.run(thread, task)
      const { want } = task
      const kept = known({ ...task, want })
      const { key, form, items } = kept
      let fresh = 0
      for (const { from, to } of gaps(items, task)) {
        const result = await pool.run(thread, { ...task, from, to })
        const found = result[want]
        store.write(key, { from, to, bytes: form.bytesOf(found) })
        for (const [index, item] of found.entries()) items.set(from + index, item)
        fresh += to - from
      }
      recalled += task.to - task.from - fresh
      kept.handedTo = Math.max(kept.handedTo, task.to)
      return answer(task, items)
    },
    close: () => pool.close(),
  }
}

function recall(store: Store, spec: LineSpec, task: Task & { want: Kept }): Known {
  const form = formOf(spec, task.want)
  const key = runKey(spec, task.carriers, task.seed, form.name)
  const items = new Map<number, unknown>()
  for (const entry of store.read(key)) {
    const found = form.itemsOf(entry.bytes, entry.to - entry.from)
    if (found === null) store.drop(key, entry)
    else for (const [index, item] of found.entries()) items.set(entry.from + index, item)
  }
  return { key, form, items, handedTo: 0 }
}

/** What of a task is not known, as stretches. */
function gaps(items: ReadonlyMap<number, unknown>, { from, to }: Task): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = []
  for (let replication = from; replication < to; replication += 1) {
    if (items.has(replication)) continue
    const last = found.at(-1)
    if (last?.to === replication) last.to = replication + 1
    else found.push({ from: replication, to: replication + 1 })
  }
  return found
}

/** Hands the items over: most are asked for once, and the memory is needed elsewhere. */
function answer({ from, to, want }: Task, items: Map<number, unknown>): TaskResult {
  const given = Array.from({ length: to - from }, (_, index) => items.get(from + index))
  for (let replication = from; replication < to; replication += 1) items.delete(replication)
  return { ...NOTHING, [want]: given }
}
