import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { decisionExample } from '../../../../tests/helpers/decisionRuns.ts'
import { SMALL_LINE, scenarioOf } from '../../../../tests/helpers/scenarioTexts.ts'
import { chosenAlternative } from './chosen.ts'
import { type PromisedShifts, promiseRunsOf, slowerFactors } from './promiseRuns.ts'

const decision = decisionExample()
const chosen = chosenAlternative(decision, 'promise', 'base-line.decision.yaml')
const scenario = scenarioOf(SMALL_LINE)

test('the line runs as it stands, then with the longer work of people who learn, in fewer windows', async () => {
  const asked: [number, number][] = []
  const shifts: PromisedShifts = (line, replications, factor) => {
    asked.push([replications, factor])
    return sweepCarriers(line, { counts: [line.carriers.count], replications: 3 }, { seed: '1', workers: 0 })
  }
  const { runs, sweep } = await promiseRunsOf(decision, chosen, scenario, 100, shifts)
  const factors = slowerFactors(decision.promise!)
  expect(factors).toHaveLength(4)
  expect(asked).toEqual([[100, 1], ...factors.map((factor) => [40, factor])])
  expect(runs.slower.map(({ factor }) => factor)).toEqual([1, ...factors])
  const { units } = sweep.counts[0]!
  expect(runs.slower[0]!.mean).toBeCloseTo(units.reduce((sum, one) => sum + one, 0) / 3, 12)
  expect(runs.slower.map(({ mean }) => mean)).toEqual(runs.slower.map(({ mean }) => mean).toSorted((a, b) => b - a))
  expect(runs.name).toBe(decision.alternatives[chosen.of]!.name)
})

test('without learning nothing more is run; a line that makes nothing ends it at once', async () => {
  expect(slowerFactors({ learning: null })).toEqual([])
  let runs = 0
  const nothing: PromisedShifts = async (line) => {
    runs += 1
    const sweep = await sweepCarriers(line, { counts: [line.carriers.count], replications: 2 }, { seed: '1', workers: 0 })
    return { ...sweep, counts: sweep.counts.map((count) => ({ ...count, units: [0, 0] })) }
  }
  await expect(promiseRunsOf(decision, chosen, scenario, 2, nothing)).rejects.toThrow('there is nothing to promise')
  expect(runs).toBe(1)
})

test('a stop while the longer work is simulated leaves the weeks of learning untold', async () => {
  const stopped = AbortSignal.abort()
  const shifts: PromisedShifts = (line, _, factor) =>
    sweepCarriers(
      line,
      { counts: [line.carriers.count], replications: 2 },
      { seed: '1', workers: 0, ...(factor > 1.5 ? { signal: stopped } : {}) },
    )
  const { runs } = await promiseRunsOf(decision, chosen, scenario, 2, shifts)
  expect(slowerFactors(decision.promise!).some((factor) => factor > 1 && factor <= 1.5)).toBe(true)
  expect(runs.slower).toEqual([])
})
