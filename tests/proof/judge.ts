/** One exactly known value against the engine, with as many runs as it takes to see an error of 1 %. */
import { createSimulator } from '@loopwright/line'
import { tQuantile } from '@loopwright/stats'
import { type ExactCheck, exactLoop } from '../oracle/exact/exactLoop.ts'

export interface Verdict {
  readonly family: string
  readonly id: string
  readonly quantity: string
  readonly source: string
  /** per second */
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
/** relative error to be seen */
export const SIZE = 0.01
/** chance that it is seen */
export const POWER = 0.999

const FIRST = 60
const MOST = 20_000
/** outputs in a window and before it */
const OUTPUTS = 400
const WARMUP_OUTPUTS = 80

/** Output per second that the check stands for. */
export const rateOf = (check: ExactCheck): number =>
  check.quantity.includes('seconds between') ? 1 / check.value : check.value / (check.scale ?? 1)

/** Runs in batches, each as large as all before, until an error of `size` would be seen. */
export function judge(check: ExactCheck & { readonly source?: string }, size = SIZE): Verdict {
  const rate = rateOf(check)
  const told = { family: check.family, id: check.id, quantity: check.quantity, source: check.source ?? '', value: rate }
  if (check.tolerance.kind === 'deterministic') return { ...told, ...exactly(check, rate) }
  const window = Math.ceil(OUTPUTS / rate)
  const simulator = createSimulator(exactLoop(check, Math.ceil(WARMUP_OUTPUTS / rate), window))
  let [n, sum, squares] = [0, 0, 0]
  for (;;) {
    const until = n === 0 ? FIRST : Math.min(MOST, 2 * n)
    for (; n < until; n++) {
      const x = simulator.run('proof', n).output / window
      sum += x
      squares += (x - rate) ** 2
    }
    const simulated = sum / n
    const standardError = Math.sqrt(Math.max(0, squares / n - (simulated - rate) ** 2) / (n - 1))
    const t = tQuantile(1 - FALSE_ALARM / 2, n - 1)
    const sees = ((t + tQuantile(POWER, n - 1)) * standardError) / rate
    if (sees <= size || n === MOST) {
      // an output more or less at the ends of the window
      const ends = 1e-9 * rate
      return {
        ...told,
        simulated,
        standardError,
        replications: n,
        sees,
        holds: Math.abs(simulated - rate) <= t * standardError + ends && sees <= size,
      }
    }
  }
}

/** Constant times: the pattern repeats after at most so many outputs as there are zones, so the count over common multiples is exact. */
function exactly(check: ExactCheck, rate: number): Omit<Verdict, 'family' | 'id' | 'quantity' | 'source' | 'value'> {
  const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b))
  const outputs = Array.from({ length: check.model.zones }, (_, k) => k + 1).reduce((a, b) => (a * b) / common(a, b))
  const period = Math.round(outputs / check.value)
  const { output } = createSimulator(exactLoop(check, check.tolerance.warmupSeconds, 2 * period)).run('proof', 0)
  return { simulated: (output / (2 * outputs)) * rate, standardError: 0, replications: 1, sees: 0, holds: output === 2 * outputs }
}
