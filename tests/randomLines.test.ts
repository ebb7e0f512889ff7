/**
 * 500 lines made up at random (fixed seed): no rule of verify mode is broken, every number of the result is what the trace says, and neither a second run
 * nor the opposite storing order of simultaneous events changes the trace. Each feature occurs in at least a tenth of them.
 */
import { type LineSpec, simulate, Trace } from '@loopwright/line'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compare } from './oracle/identities/compare.ts'
import { recount } from './oracle/identities/recount.ts'
import { featuresOf } from './oracle/readAloud/features.ts'
import { randomLine } from './oracle/readAloud/randomLine.ts'

const LINES = 500
const SEED = 20_26

/** What a run has shown, by its trace and result. */
function shown(trace: Trace, result: ReturnType<typeof simulate>): string[] {
  const words = new Set(trace.kinds)
  const has = (kind: number, name: string) => (words.has(kind) ? [name] : [])
  const atSpeed = trace.kinds.some((kind, k) => kind === 0 && trace.details[k] === 1)
  return [
    `ended: ${result.end.reason}`,
    ...(atSpeed ? ['passing at speed'] : []),
    ...has(3, 'failed pass'),
    ...has(7, 'release'),
    ...has(9, 'position change'),
    ...has(13, 'breakdown'),
    ...has(15, 'break'),
    ...(result.output > 0 ? ['output'] : []),
    ...(result.breakdowns.some(({ count }) => count > 1) ? ['two breakdowns of one source'] : []),
    ...(result.zones.some(({ stoppedBy }) => stoppedBy.length > 1) ? ['overlapping causes'] : []),
  ]
}

const FEATURES = [
  'passing at speed',
  'failed pass',
  'release',
  'position change',
  'breakdown',
  'break',
  'output',
  'two breakdowns of one source',
  'overlapping causes',
  'ended: end of window',
  'ended: gridlock',
  'ended: out of products',
  'no ramp',
  'train release',
  'derived move',
  'given move',
  'given and derived moves',
  'given clear',
  'clear as the move drawn',
  'move of 0 s',
  'across',
  'transfer in low, out high',
  'transfer in high, out low',
  'transfer that need not change',
  'position change at a station',
  'exit-clear transfer',
  'two exit-clear transfers in a row',
  'station with unload + load + work',
  'station with unload + load',
  'station with unload',
  'station with load',
  'station with work',
  'duty without a task',
  'several tasks in a duty',
  'shared task',
  'variant without a time',
  'automatic station',
  'works in breaks',
  'random release',
  'breakdown of station, operating',
  'breakdown of station, calendar',
  'breakdown of zone, operating',
  'breakdown of zone, calendar',
  'breakdown of transfer, operating',
  'breakdown of transfer, calendar',
  'breakdown of section, operating',
  'breakdown of section, calendar',
  'two sources on a part',
  'breaks, conveyor goes on',
  'breaks, conveyor stops',
  'mix random',
  'mix levelled',
  'mix pattern',
  'mix list',
  'start spread',
  'start packed',
  'start at zones named',
]

describe(`${LINES} random lines`, () => {
  const counts = new Map<string, number>()
  const lines: readonly LineSpec[] = fc.sample(randomLine(), { seed: SEED, numRuns: LINES })

  test('rules, identities, the second run and the opposite storing order', () => {
    lines.forEach((spec, index) => {
      const seed = `line ${index}`
      const traces = [new Trace(), new Trace(), new Trace()] as const
      const told = `random line ${index} of seed ${SEED}: ${JSON.stringify(spec)}`
      try {
        const result = simulate(spec, { seed, replication: 0, trace: traces[0], verify: true })
        const again = simulate(spec, { seed, replication: 0, trace: traces[1] })
        const untraced = simulate(spec, { seed, replication: 0, verify: true })
        const plain = simulate(spec, { seed, replication: 0 })
        const backwards = simulate(spec, { seed, replication: 0, trace: traces[2], verify: true, backwards: true })
        const { endSeconds } = spec.window
        const longer = new Trace()
        const more = simulate(
          { ...spec, window: { ...spec.window, endSeconds: endSeconds + 100 } },
          { seed, replication: 0, trace: longer },
        )
        expect(compare(spec, result, recount(spec, longer, result.end.reason === 'end of window' ? more.end : result.end)), told).toEqual(
          [],
        )
        expect([traces[1].hash.digest(), traces[2].hash.digest()], told).toEqual([traces[0].hash.digest(), traces[0].hash.digest()])
        expect([again, untraced, plain, backwards], told).toEqual([result, result, result, result])
        for (const feature of [...featuresOf(spec), ...shown(traces[0], result)]) counts.set(feature, (counts.get(feature) ?? 0) + 1)
      } catch (error) {
        throw new Error(`${told}\n${(error as Error).message}`, { cause: error })
      }
    })
  })

  test('the counts', () => {
    const rows = FEATURES.map((feature) => `${String(counts.get(feature) ?? 0).padStart(5)}  ${feature}`)
    process.stdout.write(`of ${LINES} random lines\n${rows.join('\n')}\n`)
    expect(counts.size).toBeGreaterThanOrEqual(FEATURES.length)
  })

  test.each(FEATURES)('at least a tenth of the lines have: %s', (feature) => {
    expect(counts.get(feature) ?? 0).toBeGreaterThanOrEqual(LINES / 10)
  })
})
