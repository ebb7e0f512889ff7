/**
 * Loops whose output is exactly known: closed forms and Markov chains made outside this project. Source and method of each value stand beside it in exact/*.json.
 *
 * Random ones: 60 replications with seed `exact`; the mean may lie t standard errors off, t the two-sided 1e-6 point of Student's t with 59 degrees of freedom:
 * a right engine fails one of these checks with a probability of 1e-6. Each check names the relative error that it finds with a probability of at least 0.999 (`sees`).
 */
import { createSimulator, type LineSpec, type RunResult, Trace } from '@loopwright/line'
import { tQuantile } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { type ExactCheck, type ExactRing, exactChecks } from './exact/exactCheck.ts'
import { exactLine } from './exact/exactLine.ts'
import { knownOf, measuredOf, measureOf, needsTrace } from './exact/measure.ts'

const FALSE_ALARM = 1e-6
const REPLICATIONS = 60
const T = tQuantile(1 - FALSE_ALARM / 2, REPLICATIONS - 1)
/** a deviation of t + this many standard errors is found with probability 0.999 */
const POWER = tQuantile(0.999, REPLICATIONS - 1)

const checks = exactChecks()
const of = (kind: string) => checks.filter((check) => check.tolerance.kind === kind)

interface Estimate {
  readonly mean: number
  readonly error: number
}

function estimate(values: readonly number[]): Estimate {
  const n = values.length
  const mean = values.reduce((a, b) => a + b, 0) / n
  return { mean, error: Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1) / n) }
}

function replicate<X>(spec: LineSpec, measure: (result: RunResult) => X): X[] {
  const simulator = createSimulator(spec)
  return Array.from({ length: REPLICATIONS }, (_, replication) => measure(simulator.run({ seed: 'exact', replication })))
}

/** Families whose output varies so little that an error of 1 % can be seen: they run this many times as long. */
const LONGER: Readonly<Record<string, number>> = { 'integer-times': 3, 'one-random-station': 4 }

/** outputs a window and before it */
const OUTPUTS = 300
const WARMUP_OUTPUTS = 80

const rates = (check: ExactCheck, change: (spec: LineSpec) => LineSpec = (spec) => spec): Estimate => {
  const window = Math.ceil((OUTPUTS * (LONGER[check.family] ?? 1)) / knownOf(check))
  const spec = change(exactLine(check, Math.ceil(WARMUP_OUTPUTS / knownOf(check)), window))
  return estimate(replicate(spec, ({ output }) => output / window))
}

/** The relative error that is seen, by check or by family. */
const SEES: Readonly<Record<string, number>> = {
  'integer-times': 0.009,
  'one-random-station': 0.01,
  'longer-of-two-with-moves': 0.029,
  'two-stations-longer-of-two': 0.047,
  'step-ring': 0.029,
  'exclusion-ring-shapes': 0.029,
  'breakdown-one-carrier': 0.035,
  'exclusion-ring': 0.041,
  'exclusion-ring-slow-path': 0.041,
  'exclusion-ring-all-different': 0.041,
  'ring-all-stations': 0.047,
  'ring-work-and-move': 0.053,
  'ring-task-shapes': 0.053,
  'open-line-task-shapes': 0.053,
  'breakdown-constant-work': 0.058,
  'breakdown-one-station': 0.14,
  'breakdown-two-stations': 0.14,
  'breakdown-ring': 0.164,
  '2H.H2scv2.N3': 0.075,
  'H2scv2.K3.b0': 0.07,
  'p0.05-0.03.r0.3-0.2.N4': 0.085,
}

describe('output of random loops', () => {
  const random = checks.filter((check) => measuredOf(check) === 'rate' && check.tolerance.kind !== 'deterministic')
  const known = new Map<string, Estimate>()

  test.each(random.map((check) => [check.family, check.id, check] as const))('%s %s', (family, id, check) => {
    const { mean, error } = rates(check)
    known.set(id, { mean, error })
    const rate = knownOf(check)
    const told = `mean ${mean}, value ${rate}, standard error ${error}`
    expect(Math.abs(mean - rate), told).toBeLessThanOrEqual(T * error)
    expect((T + POWER) * error, told).toBeLessThanOrEqual((SEES[id] ?? SEES[family] ?? 0.065) * rate)
  })

  test.each([
    ['hom.Z6.N2', 'hom.Z6.N4'],
    ['slow0.8.Z6.N2', 'slow0.8.Z6.N4'],
    ['dis8.N2', 'dis8.N6'],
    ['2K.E2.N2', '2K.E2.N4'],
  ])('carriers and holes change places: %s and %s give one output', (few, many) => {
    // F. Spitzer, Adv. Math. 5 (1970) 246–290 (from memory); Y. Dallery, Z. Liu, D. Towsley, J. ACM 41 (1994) 903–942. Clear = the move drawn, no work.
    const [a, b] = [known.get(few)!, known.get(many)!]
    expect(Math.abs(a.mean - b.mean)).toBeLessThanOrEqual(T * Math.hypot(a.error, b.error))
  })

  test('a ring of all different moves gives the same output when the order of its paths is reversed', () => {
    // S. Goldstein & E. Speer, Phys. Rev. E 58 (1998) 4226 (from memory)
    const check = random.find(({ id }) => id === 'dis8.N2')!
    const { mean, error } = rates(check, (spec) => {
      const moves = spec.paths.map((path) => path.moveSeconds).reverse()
      return { ...spec, paths: spec.paths.map((path, p) => ({ ...path, moveSeconds: moves[p]! })) }
    })
    expect(Math.abs(mean - check.value)).toBeLessThanOrEqual(T * error)
  })

  test('every value is one that a defect would miss: a ring whose zones turn free at the arrival of the next carrier gives another one', () => {
    // the exclusion ring with clear 0 instead of clear = move
    const check = random.find(({ id }) => id === 'hom.Z6.N4')!
    const { mean, error } = rates(check, (spec) => ({
      ...spec,
      paths: spec.paths.map((path) => ({ ...path, clearSeconds: { kind: 'constant', value: 0 } })),
    }))
    expect(Math.abs(mean - check.value)).toBeGreaterThan(10 * error)
  })
})

describe('products that arrive', () => {
  const queues = checks.filter((check) => measuredOf(check) === 'queue')

  test.each(queues.map((check) => [check.id, check] as const))('%s', (_, check) => {
    const window = check.tolerance.windowSeconds / 100
    const spec = exactLine(check, window / 10, window)
    const trace = new Trace()
    const simulator = createSimulator(spec, needsTrace(check) ? { trace } : {})
    const measure = measureOf(check)
    const { mean, error } = estimate(
      Array.from({ length: REPLICATIONS }, (_, replication) => measure(simulator.run({ seed: 'exact', replication }), trace)),
    )
    const told = `mean ${mean}, value ${check.value}, standard error ${error}`
    expect(Math.abs(mean - check.value), told).toBeLessThanOrEqual(T * error)
    expect((T + POWER) * error, told).toBeLessThanOrEqual(0.12 * check.value)
  })
})

describe('spread of the output', () => {
  /** Sample variance of the outputs in equal windows of one long run, per second. Its relative standard error is √(2/(windows − 1)) = 4.5 %; 4.892 of them are 22 %. */
  const WINDOWS = 1000
  const COUNTS = 60
  test.each(of('variance').map((check) => [check.family, check.id, check] as const))('%s %s', (family, _, check) => {
    // outputs a second of the two loops: 3·3/(6·5) and 2/3 (the values of hom.Z6.N3 and 2B.b11.N2)
    const rate = family === 'exclusion-ring-variance' ? 0.3 : 2 / 3
    const window = COUNTS / rate
    const warmup = 1000
    const { outputSeconds } = createSimulator(exactLine(check, warmup, WINDOWS * window)).run({ seed: 'exact', replication: 0 })
    const counts = new Array<number>(WINDOWS).fill(0)
    for (const at of outputSeconds) counts[Math.min(WINDOWS - 1, Math.floor((at - warmup) / window))]!++
    const mean = counts.reduce((a, b) => a + b) / WINDOWS
    const variance = counts.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (WINDOWS - 1) / window
    expect(Math.abs(variance / check.value - 1)).toBeLessThanOrEqual(4.892 * Math.sqrt(2 / (WINDOWS - 1)) + 0.03)
    // 0.03: what the ends of a window of 60 outputs may add. Independent exponential gaps would give the rate itself.
    expect(rate / check.value).toBeGreaterThan(1.5)
  })

  test.each(of('statistical').flatMap((check) => (check.quantity.includes('squared') ? [[check.id, check] as const] : [])))(
    '%s',
    (_, check) => {
      // One station of 1 s that never waits, up 9 s on average, repair 1 s: mean gap 10/9 s. Variances of gaps are unbiased in each replication.
      const gap = 10 / 9
      const values = replicate(exactLine(check, 100, 1500 * gap), ({ outputSeconds }) => {
        const gaps = outputSeconds.slice(1).map((at, k) => at - outputSeconds[k]!)
        const mean = gaps.reduce((a, b) => a + b) / gaps.length
        return gaps.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (gaps.length - 1) / gap ** 2
      })
      const { mean, error } = estimate(values)
      expect(Math.abs(mean - check.value)).toBeLessThanOrEqual(T * error)
      expect((T + POWER) * error).toBeLessThanOrEqual(0.24 * check.value)
    },
  )
})

describe('constant times', () => {
  const lowestMultiple = (zones: number): number => {
    const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b))
    return Array.from({ length: zones }, (_, k) => k + 1).reduce((a, b) => (a * b) / common(a, b))
  }

  test.each(of('deterministic').map((check) => [check.id, check.note, check] as const))('%s: %s', (_, __, check) => {
    // The pattern repeats after at most Z outputs, so over a multiple of 1, 2, … Z outputs the count is exact, and every instant comes again.
    const { value, tolerance } = check
    const { zones } = check.model as ExactRing
    const outputs = lowestMultiple(zones)
    const period = Math.round(outputs / value)
    expect(Math.abs(period * value - outputs)).toBeLessThan(1e-6)
    const result = createSimulator(exactLine(check, tolerance.warmupSeconds, 2 * period)).run({ seed: 'exact', replication: 0 })
    expect(result.end.reason).toBe('end of window')
    expect(result.output).toBe(2 * outputs)
    expect(result.zones.map((zone) => zone.movesOut)).toEqual(new Array(zones).fill(2 * outputs))
    const late = result.outputSeconds.slice(outputs)
    expect(late).toEqual(result.outputSeconds.slice(0, outputs).map((at) => at + period))
  })
})
