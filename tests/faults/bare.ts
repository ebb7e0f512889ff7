/** What processes side by side get of a machine with nothing between them: a queue cannot be asked for more. */
import { fileURLToPath } from 'node:url'
import { member } from './crew.ts'

export interface Bare {
  readonly processes: number
  /** how many times as much as one process, by the clock */
  readonly timesOne: number
  /** the same by processor time: below `processes` where they take the same core, or each other's memory, in turns */
  readonly byProcessor: number
}

interface Busy {
  readonly perSecond: number
  readonly processorMs: number
}

const BUSY = fileURLToPath(new URL('./busy.ts', import.meta.url))
const SECONDS = 2

/**
 * Measured in turns, so that what else the machine does meets all of them.
 *
 * @param counts  of processes, 1 first
 * @param turns   count, ≥ 1
 */
export async function bare(kind: 'plain' | 'runs', counts: readonly number[], turns: number): Promise<Bare[]> {
  const found = counts.map((processes) => ({ processes, perSecond: 0, processorMs: 0 }))
  for (let turn = 0; turn < turns; turn += 1)
    for (const one of found) {
      const all = await Promise.all(Array.from({ length: one.processes }, () => busy(kind)))
      one.perSecond += total(all.map(({ perSecond }) => perSecond)) / turns
      one.processorMs += total(all.map(({ processorMs }) => processorMs)) / one.processes / turns
    }
  const [first] = found
  return found.map(({ processes, perSecond, processorMs }) => ({
    processes,
    timesOne: perSecond / first!.perSecond,
    byProcessor: (processes * first!.processorMs) / processorMs,
  }))
}

async function busy(kind: string): Promise<Busy> {
  const one = member(['--conditions=loopwright-source', '--import', 'tsx', BUSY, kind, String(SECONDS)])
  const { code } = await one.ended
  if (code !== 0) throw new Error(one.said())
  return JSON.parse(one.said()) as Busy
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
