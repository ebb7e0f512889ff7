/**
 * The engine against the reading aloud of the page, on lines of any kind made up at random: graphs, people, goods, rejects, all stops.
 * Every number of the run's result, and every entry of the trace. Loops with own operators alone are in `agreement.test.ts`.
 */
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expectAgreement } from './agree.ts'
import { GENERAL_FEATURES, generalFeatures } from './generalFeatures.ts'
import { generalLine } from './generalLine.ts'
import { readAloud } from './readAloud.ts'

const LINES = 350
/** Each feature is shown by at least so many of them. */
const LEAST = 3
const SEED = 'agreement'

describe(`${LINES} random lines of any kind`, () => {
  const lines = fc.sample(generalLine(), { seed: 9, numRuns: LINES })
  const runs = lines.map((spec, index) => readAloud(spec, SEED, index % 3))

  test('engine and reading aloud agree on every number and every entry', () => {
    expectAgreement(lines, runs, SEED)
  })

  const seen = new Map<string, number>()
  lines.forEach((spec, index) => {
    for (const name of generalFeatures(spec, runs[index]!)) seen.set(name, (seen.get(name) ?? 0) + 1)
  })
  test.each(Object.keys(GENERAL_FEATURES))(`at least ${LEAST} of the lines show: %s`, (name) => {
    expect(seen.get(name) ?? 0).toBeGreaterThanOrEqual(LEAST)
  })
})
