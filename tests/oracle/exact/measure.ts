/** What a check of the files beside this one measures, from a run. */
import { type RunResult, TRACE_KINDS, type Trace } from '@loopwright/line'
import type { ExactCheck } from './exactCheck.ts'

/** The value of one run. `value(check)` is what its mean over many runs must be. */
export type Measure = (run: RunResult, trace: Trace) => number

/** outputs in a block of a spread of outputs */
const BLOCK = 60

/** Kinds of quantity, by how long they must be watched. */
export type Measured = 'rate' | 'queue' | 'spread'

export function measuredOf({ model, quantity }: ExactCheck): Measured {
  if (quantity.startsWith('variance') || quantity.startsWith('squared')) return 'spread'
  return 'supply' in model || 'servers' in model ? 'queue' : 'rate'
}

/** What the line of the check gives. */
export function knownOf({ quantity, value, scale }: ExactCheck): number {
  return quantity.startsWith('mean seconds between') ? 1 / value : value / (scale ?? 1)
}

/** Whether the measure reads the trace. */
export const needsTrace = ({ quantity }: ExactCheck): boolean => quantity in BY_TRACE

/** @throws RangeError  for a quantity that it does not know */
export function measureOf(check: ExactCheck): Measure {
  const { quantity } = check
  if (quantity.startsWith('variance')) return outputSpread(check.outputPerSecond!)
  if (quantity.startsWith('squared')) return gapSpread(check.outputPerSecond!)
  const measure = BY_RUN[quantity] ?? BY_TRACE[quantity]
  if (measure !== undefined) return measure
  if (measuredOf(check) === 'rate') return (run) => run.output / windowOf(run)
  throw new RangeError(`no measure for: ${quantity}`)
}

const windowOf = ({ window }: RunResult): number => window.endSeconds - window.warmupSeconds
const servers = (run: RunResult) => run.stations.filter((station) => station.seconds.working > 0)
/** mean number of products at work */
const atWork = (run: RunResult): number => servers(run).reduce((sum, { seconds }) => sum + seconds.working, 0) / windowOf(run)
const supplyOf = ({ supplies: [supply] }: RunResult) => supply!

const BY_RUN: Readonly<Record<string, Measure>> = {
  'share of the time in which the server works': (run) => atWork(run) / servers(run).length,
  'mean number of products waiting': (run) => supplyOf(run).queueMean,
  'mean number of products waiting or worked on': (run) => supplyOf(run).queueMean + atWork(run),
  'mean seconds from arrival to the start of the work': (run) => supplyOf(run).waiting.mean!,
  'mean seconds from arrival to the end of the work': (run) => supplyOf(run).waiting.mean! + run.timeInLine.mean!,
}

const BY_TRACE: Readonly<Record<string, Measure>> = {
  // arrivals at random find a server free as often as one is free
  'share of the arrivals that must wait': (run, trace) => shareBusy(run, trace, run.stations.length),
  'share of the time without any product waiting or worked on': (run, trace) => shareBusy(run, trace, 0),
}

const STARTS = TRACE_KINDS.indexOf('duty start')
const ENDS = TRACE_KINDS.indexOf('duty end')
const LOADING = 1

/** Share of the window in which so many stations load. */
function shareBusy(run: RunResult, trace: Trace, wanted: number): number {
  const { warmupSeconds, endSeconds } = run.window
  let [busy, since, sum] = [0, 0, 0]
  const until = (at: number): void => {
    if (busy === wanted) sum += Math.max(0, at - Math.max(since, warmupSeconds))
    since = at
  }
  for (let k = 0; k < trace.length; k++) {
    const kind = trace.kinds[k]!
    if (trace.details[k] !== LOADING || (kind !== STARTS && kind !== ENDS)) continue
    until(trace.seconds[k]!)
    busy += kind === STARTS ? 1 : -1
  }
  until(endSeconds)
  return sum / windowOf(run)
}

/**
 * Long-run variance of the count per second. With blocks longer than the line remembers, it is that of a block and twice the covariance with the next one, so
 * no block is too short but by what two blocks apart still know of each other. The mean is the known one.
 */
function outputSpread(rate: number): Measure {
  const seconds = BLOCK / rate
  return (run) => {
    const blocks = Math.floor(windowOf(run) / seconds)
    const off = new Array<number>(blocks).fill(-BLOCK)
    for (const at of run.outputSeconds) {
      const block = Math.ceil((at - run.window.warmupSeconds) / seconds) - 1
      if (block < blocks) off[block]!++
    }
    let sum = 0
    for (let k = 0; k + 1 < blocks; k++) sum += off[k]! ** 2 + 2 * off[k]! * off[k + 1]!
    return sum / (blocks - 1) / seconds
  }
}

/** Squared coefficient of variation of the time between two outputs, with the known mean. */
function gapSpread(rate: number): Measure {
  return ({ outputSeconds }) => {
    let sum = 0
    for (let k = 1; k < outputSeconds.length; k++) sum += ((outputSeconds[k]! - outputSeconds[k - 1]!) * rate - 1) ** 2
    return sum / (outputSeconds.length - 1)
  }
}
