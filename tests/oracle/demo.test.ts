/**
 * The demo loop against numbers from elsewhere: closed forms without chance, and the results of an independent implementation of the model (another program, written
 * from the same page by others: 600 replications a count, standard error 0.24 to 0.5 units). The scenario itself is invented; no claim about a plant rests on it.
 */
import { readFileSync } from 'node:fs'
import { type LineSpec, simulate } from '@loopwright/line'
import { distributionMean } from '@loopwright/stats'
import { sweepCarriers } from '@loopwright/study'
import { withCarriers } from '@loopwright/study/change'
import { applyVariation, readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'

const FILE = 'scenarios/outdoor-unit-base-line.yaml'
const TEXT = readFileSync(new URL(`../../${FILE}`, import.meta.url), 'utf8')

function lineOf(text: string): LineSpec {
  const { scenario } = readScenario(text)
  if (scenario === null) throw new Error(`${FILE} has errors`)
  return scenario.line
}

/** Every time at its mean over the mix, no stops, no breaks. */
function withoutChance(line: LineSpec): LineSpec {
  const { mix } = line
  if (mix.kind !== 'random') throw new Error('the demo mix is random')
  const whole = mix.shares.reduce((sum, share) => sum + share, 0)
  const level = (tasks: LineSpec['stations'][number]['work']) =>
    tasks?.map((task) => {
      const mean = task.seconds.reduce((sum, time, v) => sum + (time === null ? 0 : (distributionMean(time) * mix.shares[v]!) / whole), 0)
      return { ...task, seconds: task.seconds.map(() => ({ kind: 'constant' as const, value: mean })) }
    }) ?? null
  return {
    ...line,
    stations: line.stations.map((s) => ({ ...s, unload: level(s.unload), load: level(s.load), work: level(s.work) })),
    breakdowns: [],
    breaks: [],
  }
}

describe('without chance, stops and breaks', () => {
  const line = withoutChance(lineOf(TEXT))
  const rate = (carriers: number) => simulate(withCarriers(line, carriers), { seed: '1', replication: 0 })

  // T0 = 374.76 s work + 7 · 2 s release + 22 · 6 s at speed + 11 stops · 0.625 s + 4 lifts · 2 s = 535.635 s
  test('one carrier alone takes 535.635 s for a lap', () => {
    expect(rate(1).lap.mean).toBeCloseTo(535.635, 3)
  })

  // Below the first knee N / T0; between the knees 1 / C_b with C_b = 61.8 + 2 + 6.625 + 4.95 = 75.375 s; at 17 holes are short: 1 hole / (18 · 4.95 s).
  test.each([
    [5, 33.6],
    [8, 47.76],
    [12, 47.76],
    [16, 47.76],
    [17, 40.4],
  ])('%d carriers make %d an hour, to one carrier in the window', (carriers, perHour) => {
    const { output, window } = rate(carriers)
    expect(Math.abs(output - (perHour * (window.endSeconds - window.warmupSeconds)) / 3600)).toBeLessThanOrEqual(1)
  })
})

/**
 * Means with the luck of their worlds taken out: ± 2 units, on the slopes (8, 16, 17) ± 3. 200 of ours are worth 680 to 1,430
 * without that (0.3 to 0.4 units), those of the others are 600 (0.24 to 0.5): four to six standard errors of the difference, so that a right program fails less than once in 1,000 seeds; the seed is fixed.
 * As it is an estimate, the plain mean must be near too: ± 4 units, four standard errors (0.8 and 0.5). Chance to meet 320: ± 0.05; a program that is 0.1 off is
 * found with a chance of 0.97 (standard error of a share near 0.85 of 200: 0.025).
 */
const REPLICATIONS = 200
const OF_OTHERS = 600
const PLAIN_WITHIN = 4

describe(`with chance, ${REPLICATIONS} shifts a count`, () => {
  const judge = async (text: string, expected: readonly (readonly [carriers: number, mean: number, share: number, within: number])[]) => {
    const counts = expected.map(([carriers]) => carriers)
    const swept = await sweepCarriers(lineOf(text), { counts, replications: REPLICATIONS, plan: 320 }, { seed: 'demo', workers: 0 })
    expected.forEach(([carriers, mean, share, within], k) => {
      const found = swept.counts[k]!
      expect(found.carriers).toBe(carriers)
      const controlled = found.controlled!
      expect(Math.abs(controlled.mean - mean), `mean at ${carriers}`).toBeLessThanOrEqual(within)
      expect(Math.abs(found.mean!.mean - mean), `plain mean at ${carriers}`).toBeLessThanOrEqual(PLAIN_WITHIN)
      expect(Math.abs(found.meetsPlan!.share - share), `chance at ${carriers}`).toBeLessThanOrEqual(0.05)
      expect(controlled.worth, `plain shifts that know the mean as well at ${carriers}`).toBeGreaterThan(OF_OTHERS)
    })
  }

  test('single release', async () => {
    await judge(TEXT, [
      [6, 267.5, 0, 2],
      [8, 318.9, 0.51, 3],
      [10, 330.2, 0.83, 2],
      [12, 332.5, 0.87, 2],
      [16, 320.7, 0.59, 3],
      [17, 274.4, 0, 3],
    ])
  })

  test('train release', async () => {
    await judge(applyVariation(TEXT, 'train').text!, [
      [9, 342.8, 0.97, 2],
      [12, 352.2, 1, 2],
      [17, 335.7, 0.9, 3],
    ])
  })

  test('18 carriers in 18 places to wait: nothing moves', () => {
    const { output, end } = simulate(withCarriers(lineOf(TEXT), 18), { seed: '1', replication: 0 })
    expect([output, end.reason, end.atSeconds, end.cycle.length]).toEqual([0, 'gridlock', 0, 18])
  })
})
