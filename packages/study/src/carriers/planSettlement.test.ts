import { stream } from '@loopwright/stats'
import { binomialCdf } from '@loopwright/stats/special'
import { describe, expect, test } from 'vitest'
import { CountStudy } from '../sweep/countStudy.ts'
import { mayNeedFewer, PlanSettlement } from './planSettlement.ts'
import { rowLayout } from '../runs/runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const layout = rowLayout(stationLoop())
const PLAN = 1
/** chance of meeting the plan by number of carriers from 1 on; a world is one uniform, the same for every count, as in a study */
const CHANCES = [0.1, 0.6, 0.87, 0.8999, 0.9, 0.9, 0.9, 0.7]

function studies(name: string): { pilot: CountStudy[]; judged: CountStudy[]; bring: (study: CountStudy, to: number) => void } {
  const draws: Record<string, number[]> = { pilot: [], judged: [] }
  const random = { pilot: stream(name, 0, 'pilot'), judged: stream(name, 0, 'judged') }
  const bring = (kind: 'pilot' | 'judged') => (study: CountStudy, to: number) => {
    const worlds = draws[kind]!
    while (worlds.length < to) worlds.push(random[kind]())
    for (let replication = study.units.length; replication < to; replication += 1) {
      const row = new Float64Array(layout.length)
      row[layout.units] = worlds[replication]! < CHANCES[study.carriers - 1]! ? PLAN : 0
      study.add(replication, [row])
    }
  }
  const all = (kind: 'pilot' | 'judged', runs: number): CountStudy[] =>
    CHANCES.map((_, index) => {
      const study = new CountStudy(index + 1, layout)
      bring(kind)(study, runs)
      return study
    })
  return { pilot: all('pilot', 15), judged: all('judged', 20), bring: bring('judged') }
}

/** Runs a settlement to its end. */
function settled(name: string): { words: (string | undefined)[]; most: number; runs: number } {
  const { pilot, judged, bring } = studies(name)
  const settlement = new PlanSettlement(pilot, CHANCES.length, PLAN, true)
  for (let more = settlement.wanted(judged, 2000); more.size > 0; more = settlement.wanted(judged, 2000)) {
    for (const [carriers, to] of more) bring(judged[carriers - 1]!, to)
  }
  const verdicts = judged.map((study) => settlement.verdict(study)!)
  const halves = verdicts.filter(({ verdict }) => verdict === 'about').map(({ low, high }) => (high - low) / 2)
  return {
    words: verdicts.map(({ verdict }) => verdict),
    most: Math.max(0, ...halves),
    runs: judged.reduce((sum, { units }) => sum + units.length, 0),
  }
}

describe('chances of 0.87, 0.8999 and 0.9, settled 200 times', () => {
  const all = Array.from({ length: 200 }, (_, study) => settled(`settled ${study}`))
  const wrong = all.filter(
    ({ words }) =>
      words.some((word, index) => word === 'met' && CHANCES[index]! < 0.9) ||
      words.some((word, index) => word === 'not met' && CHANCES[index]! >= 0.9),
  ).length

  // False alarm below 1e-6 where the word is kept.
  test('a count is told to be on the wrong side in at most 5 of 100 studies', () => {
    expect(1 - binomialCdf(wrong - 1, all.length, 0.05)).toBeGreaterThan(1e-6)
  })

  test('the smallest count that may meet it, and its neighbours, are never left open', () => {
    for (const { words } of all) {
      const first = words.findIndex((word) => word !== 'not met')
      expect(words.slice(Math.max(0, first - 1), first + 2)).not.toContain('open')
    }
  })

  test('what is about nine of ten is known closely; the far ones cost little', () => {
    for (const { most, runs } of all) {
      expect(most).toBeLessThanOrEqual(0.03)
      expect(runs).toBeLessThanOrEqual(5 * 2000 + 3 * 300)
    }
  })
})

test('nothing left to chance: one run tells, and no more are wanted', () => {
  const { pilot, judged } = studies('certain')
  const settlement = new PlanSettlement(pilot, CHANCES.length, PLAN, false)
  expect(settlement.wanted(judged, 2000).size).toBe(0)
  expect(settlement.verdict(judged[0]!)).toMatchObject({ n: 1, method: 'no chance' })
})

test('fewer carriers may do where half of the pilot meets the plan', () => {
  const { pilot } = studies('fewer')
  expect(mayNeedFewer(pilot[6]!, PLAN)).toBe(true)
  expect(mayNeedFewer(pilot[0]!, PLAN)).toBe(false)
  expect(mayNeedFewer(pilot[6]!, null)).toBe(false)
})
