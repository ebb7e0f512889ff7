/** Exactly known values against the engine, with as many runs as it takes to see an error of 1 %. */
import { createSimulator, Trace } from '@loopwright/line'
import { tQuantile } from '@loopwright/stats'
import type { ExactCheck, ExactRing } from '../oracle/exact/exactCheck.ts'
import { exactLine } from '../oracle/exact/exactLine.ts'
import { knownOf, type Measured, measuredOf, measureOf, needsTrace } from '../oracle/exact/measure.ts'

export interface Verdict {
  readonly family: string
  readonly id: string
  readonly quantity: string
  readonly source: string
  /** what the line must give: for an output, per second */
  readonly value: number
  readonly simulated: number
  /** 0: exact */
  readonly standardError: number
  readonly replications: number
  /** relative error that is found with probability 0.999 */
  readonly sees: number
  readonly holds: boolean
}

/** chance that a right engine fails one check */
export const FALSE_ALARM = 1e-6
/**
 * Relative error to be seen. Of waits and queues 3 % at most: where work takes 1 % longer, those of the files beside this one are longer by 3 … 6 %.
 * 5 % of a variance are 2.5 % of a standard deviation.
 */
export const SIZES: Readonly<Record<Measured, number>> = { rate: 0.01, queue: 0.03, spread: 0.05 }
/** chance that it is seen */
export const POWER = 0.999

const FIRST = 60
const MOST = 50_000

/** Checks that one line answers, so that it is run once for all of them. */
export function groupsOf(checks: readonly ExactCheck[]): ExactCheck[][] {
  const groups = new Map<string, ExactCheck[]>()
  for (const check of checks) {
    const key = JSON.stringify([check.family, measuredOf(check), check.tolerance.kind, check.model])
    groups.set(key, [...(groups.get(key) ?? []), check])
  }
  return [...groups.values()]
}

/** Warm-up and window, seconds. */
function lengthOf(check: ExactCheck): readonly [number, number] {
  // slots: both places and repairs are remembered for long; queues: their files say after how long the empty start is forgotten
  if ('bufferPlaces' in check.model) return [2_000, 4_000]
  switch (measuredOf(check)) {
    case 'queue':
      return [check.tolerance.warmupSeconds, 10 * check.tolerance.warmupSeconds]
    case 'spread': {
      // long times between outputs are a little less likely to lie within a window, so it is long where they are counted
      const outputs = check.quantity.startsWith('squared') ? 20_000 : 4_000
      return [Math.ceil(200 / check.outputPerSecond!), Math.ceil(outputs / check.outputPerSecond!)]
    }
    case 'rate':
      return [Math.ceil(80 / knownOf(check)), Math.ceil(400 / knownOf(check))]
  }
}

/** Runs of the line that the checks share, in batches, at most as large as all before, until an error of `size` would be seen in each. */
export function judge(checks: readonly ExactCheck[], size = SIZES[measuredOf(checks[0]!)]): Verdict[] {
  const [first] = checks
  if (first!.tolerance.kind === 'deterministic') return checks.map(exactly)
  const [warmup, window] = lengthOf(first!)
  const trace = checks.some(needsTrace) ? new Trace() : undefined
  const simulator = createSimulator(exactLine(first!, warmup, window), trace === undefined ? {} : { trace })
  const known = checks.map(knownOf)
  const measures = checks.map(measureOf)
  const sums = checks.map(() => 0)
  const squares = checks.map(() => 0)
  let n = 0
  for (let until = FIRST; ; ) {
    for (; n < until; n++) {
      const run = simulator.run({ seed: 'proof', replication: n })
      for (const [k, measure] of measures.entries()) {
        const off = measure(run, trace ?? NO_TRACE) - known[k]!
        sums[k]! += off
        squares[k]! += off ** 2
      }
    }
    const t = tQuantile(1 - FALSE_ALARM / 2, n - 1)
    const verdicts = checks.map((check, k): Verdict => {
      const off = sums[k]! / n
      const standardError = Math.sqrt(Math.max(0, squares[k]! / n - off ** 2) / (n - 1))
      const sees = ((t + tQuantile(POWER, n - 1)) * standardError) / known[k]!
      return {
        ...told(check),
        simulated: known[k]! + off,
        standardError,
        replications: n,
        sees,
        // the last term: what sums of so many numbers may be off
        holds: Math.abs(off) <= t * standardError + 1e-9 * known[k]! && sees <= size,
      }
    })
    const worst = Math.max(...verdicts.map(({ sees }) => sees))
    if (worst <= size || n === MOST) return verdicts
    until = Math.min(MOST, 2 * n, Math.ceil(1.05 * n * (worst / size) ** 2))
  }
}

const NO_TRACE = new Trace()

const told = (check: ExactCheck) => ({
  family: check.family,
  id: check.id,
  quantity: check.quantity,
  source: check.source,
  value: knownOf(check),
})

/** Constant times: the pattern repeats after at most so many outputs as there are zones, so the count over common multiples is exact. */
function exactly(check: ExactCheck): Verdict {
  const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b))
  const { zones } = check.model as ExactRing
  const outputs = Array.from({ length: zones }, (_, k) => k + 1).reduce((a, b) => (a * b) / common(a, b))
  const period = Math.round(outputs / check.value)
  const { output } = createSimulator(exactLine(check, check.tolerance.warmupSeconds, 2 * period)).run({ seed: 'proof', replication: 0 })
  const simulated = (output / (2 * outputs)) * knownOf(check)
  return { ...told(check), simulated, standardError: 0, replications: 1, sees: 0, holds: output === 2 * outputs }
}
