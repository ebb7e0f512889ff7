/**
 * The engine against the reading aloud of the page, on lines of any kind made up at random: graphs, people, goods, rejects, all stops.
 * Every number of the run's result, and every entry of the trace. Loops with own operators alone are in `agreement.test.ts`.
 */
import { type LineSpec, simulate, Trace } from '@loopwright/line'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compare } from './compare.ts'
import { compareTrace } from './compareTrace.ts'
import { GENERAL_FEATURES, generalFeatures } from './generalFeatures.ts'
import { generalLine } from './generalLine.ts'
import { readAloud } from './readAloud.ts'
import { smallest } from './smaller.ts'

const LINES = 350
/** Each feature is shown by at least so many of them. */
const LEAST = 3
const SEED = 'agreement'

describe(`${LINES} random lines of any kind`, () => {
  const lines = fc.sample(generalLine(), { seed: 9, numRuns: LINES })
  const runs = lines.map((spec, index) => readAloud(spec, SEED, index % 3))

  function differences(spec: LineSpec, replication: number, { result, log } = readAloud(spec, SEED, replication)): string[] {
    const trace = new Trace()
    simulate(spec, { seed: SEED, replication, trace })
    return [...compare(simulate(spec, { seed: SEED, replication }), result), ...compareTrace(trace, log)] // the numbers are those of a run without a trace
  }

  test('engine and reading aloud agree on every number and every entry', () => {
    lines.forEach((spec, index) => {
      const replication = index % 3
      const [first] = differences(spec, replication, runs[index])
      if (first === undefined) return
      const least = smallest(spec, (smaller) => differences(smaller, replication).length > 0)
      expect.fail(
        `line ${index} differs: ${first}\nthe smallest such line: ${JSON.stringify(least, null, 1)}\n${differences(least, replication).join('\n')}`,
      )
    })
  })

  const seen = new Map<string, number>()
  lines.forEach((spec, index) => {
    for (const name of generalFeatures(spec, runs[index]!)) seen.set(name, (seen.get(name) ?? 0) + 1)
  })
  test.each(Object.keys(GENERAL_FEATURES))(`at least ${LEAST} of the lines show: %s`, (name) => {
    expect(seen.get(name) ?? 0).toBeGreaterThanOrEqual(LEAST)
  })
})
