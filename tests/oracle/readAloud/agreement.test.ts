/**
 * The engine against the reading aloud of the page, on lines made up at random: every number of the run's result, and every entry of the trace.
 * Times on the clock's grid are compared exactly. Gamma and PERT draws come from one inverse in both, all other draws from two.
 */

import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expectAgreement } from './agree.ts'
import { expectIdentities } from './expectIdentities.ts'
import { featuresOf, featuresSeen } from './features.ts'
import { randomLine } from './randomLine.ts'
import { readAloud } from './readAloud.ts'

const LINES = 300

/** Each occurs in at least a tenth of the lines. */
const FEATURES = [
  'passing',
  'failed pass',
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
  'station with unload',
  'station with load',
  'station with work',
  'station with unload + load',
  'station with unload + work',
  'station with load + work',
  'station with unload + load + work',
  'duty without a task',
  'several tasks in a duty',
  'shared task',
  'variant without a time',
  'a carrier leaves a station zone without a duty',
  'automatic station',
  'works in breaks',
  'constant release',
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
  'overlapping causes',
  'breaks, conveyor goes on',
  'breaks, conveyor stops',
  'mix random',
  'mix levelled',
  'mix pattern',
  'mix list',
  'start spread',
  'start packed',
  'start at zones named',
  'as many carriers as may be',
  'many ties',
  'a carrier starts twice in one instant',
  'output',
  'ended: end of window',
  'ended: out of products',
  'ended: gridlock',
]

describe(`${LINES} random lines`, () => {
  const seed = 'agreement'
  const lines = fc.sample(randomLine(), { seed: 8, numRuns: LINES })
  const runs = lines.map((spec, index) => readAloud(spec, seed, index % 3))
  const features = runs.map((run, index) => new Set([...featuresOf(lines[index]!), ...featuresSeen(run, lines[index]!)]))

  test('engine and reading aloud agree on every number and every entry', () => {
    expectAgreement(lines, runs, seed)
  })

  test('the reading aloud keeps the identities', () => {
    runs.forEach((run, index) => {
      expectIdentities(lines[index]!, run)
    })
  })

  test.each(FEATURES)('at least a tenth of the lines have: %s', (feature) => {
    expect(features.filter((has) => has.has(feature)).length).toBeGreaterThanOrEqual(LINES / 10)
  })
})
