import { readFileSync } from 'node:fs'
import { type CountedStop, stopDeviations } from '@loopwright/decide/acceptance'
import { distributionMean } from '@loopwright/stats'
import { readScenario, writeScenario } from '@loopwright/scenario'
import { type SweepCount, sweepCarriers } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { followUpOf, type FollowUpStudies } from './followUpRuns.ts'
import { workSeconds } from './promiseFigures.ts'

const text = readFileSync(new URL('../../../../tests/told/lines/pump-line.yaml', import.meta.url), 'utf8')
const { scenario } = readScenario(text)
let count: SweepCount
let asked = 0
const studies: FollowUpStudies = {
  simulate: async () => [200, 201],
  recalibrate: async () => {
    asked += 1
    return { factor: 1.2, units: 180, found: true }
  },
}
const weeks = (per: number) => [1, 2].map((week) => ({ name: `W${week}`, units: 10 * per, shifts: 10 }))
const none = { stations: null, stops: null, waits: [] }

beforeAll(async () => {
  const { line } = scenario!
  count = (await sweepCarriers(line, { counts: [line.carriers.count], replications: 10 }, { seed: '1', workers: 0 })).counts[0]!
})

test('what was measured is put in, stations by their titles too, and then no factor is looked for', async () => {
  const [jam] = stopDeviations([{ stop: 'feederJam', count: 1, minutes: 1, shifts: 1 }], [{ stop: 'feederJam', count: 10, minutes: 30 }])
  expect(jam!.countDiffers).toBe(false)
  const stops: CountedStop[] = [{ stop: 'feederJam', count: 200, minutes: 1200, shifts: 10 }]
  const stations = [{ station: 'Impeller', seconds: 66, n: 40, sd: 4 }]
  const { runs, line } = await followUpOf('pump', scenario!, count, { weeks: weeks(214), stations, stops, waits: [] }, '1', studies)
  expect(asked).toBe(0)
  expect(runs.stations![0]).toMatchObject({ station: 'S2', differs: true })
  expect(runs.stops![0]).toMatchObject({ countDiffers: true, lengthDiffers: true })
  const again = readScenario(writeScenario({ ...scenario!, line: line! }))
  expect(again.problems.filter(({ severity }) => severity === 'error')).toEqual([])
  expect(workSeconds(again.scenario!)[2]).toBeCloseTo(66, 6)
  const [old, now] = [scenario!.line.breakdowns[0]!, again.scenario!.line.breakdowns[0]!]
  expect(distributionMean(now.timeToFailureSeconds) / distributionMean(old.timeToFailureSeconds)).toBeCloseTo(
    1 / runs.stops![0]!.countRatio!,
    6,
  )
  expect(distributionMean(now.repairSeconds) / distributionMean(old.repairSeconds)).toBeCloseTo(runs.stops![0]!.lengthRatio!, 6)
})

test('where only weeks are counted a factor on all work is looked for, and only where it is needed', async () => {
  expect((await followUpOf('pump', scenario!, count, { weeks: weeks(180), ...none }, '1', studies)).runs.factor!.factor).toBe(1.2)
  expect(asked).toBe(1)
  const stands = await followUpOf('pump', scenario!, count, { weeks: weeks(214), ...none }, '1', studies)
  expect([stands.runs.factor, stands.line, asked]).toEqual([null, null, 1])
})
