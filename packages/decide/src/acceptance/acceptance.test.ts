import { stream } from '@loopwright/stats'
import { normalQuantile } from '@loopwright/stats/special'
import { describe, expect, test } from 'vitest'
import { tooOften } from '../../../../tests/helpers/tooOften.ts'
import { trialBand } from './band.ts'
import { followUp, stationDeviations } from './followUp.ts'
import { sequentialPlan, standingOf } from './sequential.ts'
import { testPlan } from './testPlan.ts'

/** Counts of a line that makes `mean` units in a whole trial, in equal parts with independent normal noise, rounded. */
function walks(n: number, looks: number, mean: number, sd: number, name: string): number[][] {
  const draw = stream('1', 0, name)
  return Array.from({ length: n }, () => {
    let sum = 0
    return Array.from({ length: looks }, () => {
      sum += mean / looks + (sd / Math.sqrt(looks)) * normalQuantile(draw())
      return Math.round(sum)
    })
  })
}

describe('band', () => {
  test('between the 1st and the 19th of 19 a further one lies with chance 18/20 (Hahn & Meeker 1991)', () => {
    expect(trialBand([...Array(19).keys()], 0.9)).toMatchObject({ low: 0, high: 18, covers: 0.9 })
  })
  test('fresh trials lie within in at least nine of ten cases (5 000 bands; false alarm 1 in 10 000)', () => {
    const draw = stream('1', 0, 'band')
    let within = 0
    for (let band = 0; band < 5000; band++) {
      const { low, high } = trialBand(
        Array.from({ length: 60 }, () => draw()),
        0.9,
      )
      const next = draw()
      if (next >= low && next <= high) within += 1
    }
    expect(within / 5000).toBeGreaterThan(0.9 - 3.9 * Math.sqrt(0.09 / 5000))
    expect(within / 5000).toBeLessThan(0.93)
  })
  test('too few trials promise nothing', () =>
    expect(() => trialBand([1, 2, 3], 0.9)).toThrow('takes at least 19 simulated trials; there are 3'))
})

describe('test plan', () => {
  const at = (...pairs: [number, number][]): number[] => pairs.flatMap(([count, times]) => Array<number>(times).fill(count))
  test('one trial by hand: threshold and both errors', () => {
    // of 20 healthy trials one makes 98; of 20 slow ones two make 100
    const plan = testPlan(at([98, 1], [100, 19]), at([90, 18], [100, 2]), { falseAlarm: 0.05, miss: 0.1, trialsMost: 3 })
    expect(plan).toMatchObject({ trials: 1, passFrom: 100, meets: true })
    expect([plan.falseAlarm, plan.miss]).toEqual([expect.closeTo(0.05, 12), expect.closeTo(0.1, 12)])
  })
  test('two trials by hand: sums of independent ones', () => {
    // healthy 10 or 12, slow 8 or 11, each half: one trial from 10 on misses 0.5; of two, sums from 22 on fail 1 in 4 and are passed by 1 in 4
    const plan = testPlan([10, 12], [8, 11], { falseAlarm: 0.25, miss: 0.25, trialsMost: 2 })
    expect(plan).toMatchObject({ trials: 2, passFrom: 22, falseAlarm: 0.25, miss: 0.25, meets: true })
  })
  test('where no plan is good enough the best one is told as such', () => {
    expect(testPlan([10, 11], [10, 11], { falseAlarm: 0.1, miss: 0.1, trialsMost: 3 })).toMatchObject({
      meets: false,
      miss: 1,
      falseAlarm: 0,
    })
  })
})

describe('sequential check', () => {
  const looks = 8
  const shares = Array.from({ length: looks }, (_, look) => (look + 1) / looks)
  const plan = sequentialPlan(walks(8000, looks, 170, 5, 'healthy'), walks(4000, looks, 153, 5, 'slow'), shares, 0.1)
  test('all looks together raise as many false alarms as asked for, in trials kept apart (4 000; false alarm 1 in 10 000, rounding 2 points)', () => {
    expect(plan.falseAlarmFitted).toBeLessThanOrEqual(0.1)
    expect(Math.abs(plan.falseAlarm - 0.1)).toBeLessThan(0.02 + 3.9 * Math.sqrt(0.09 / 4000))
  })
  test('a line that is a tenth slower is caught, most often before the end', () => {
    expect(plan.miss).toBeLessThan(0.05)
    expect(plan.stoppedBy.at(-2)).toBeGreaterThan(0.7)
    expect(plan.stoppedBy.every((share, look) => look === 0 || share >= plan.stoppedBy[look - 1]!)).toBe(true)
  })
  test('looking often without paying for it raises more false alarms: the rule can fail', () => {
    const healthy = walks(4000, looks, 170, 5, 'careless')
    const careless = shares.map((_, look) => healthy.map((path) => path[look]!).sort((a, b) => a - b)[400]!)
    const alarms = walks(4000, looks, 170, 5, 'fresh').filter((path) => path.some((count, look) => count < careless[look]!)).length / 4000
    expect(alarms).toBeGreaterThan(0.2)
  })
  test('how a trial stands', () => {
    const of = (...counts: number[]) => standingOf(counts, { stopBelow: [18, 40, 60] }, 80).state
    expect([of(20), of(20, 41, 62), of(17), of(20, 39), of(20, 41, 85)]).toEqual([
      'goes on',
      'passed',
      'stopped: below what the forecast allows',
      'stopped: below what the forecast allows',
      'above the band',
    ])
    expect(() => of(20, 19)).toThrow('look 2 says 19')
    expect(() => of(1, 2, 3, 4)).toThrow('has 1 to 3 counts, not 4')
  })
  test('few trials, or trials without a count, are refused', () => {
    expect(() => sequentialPlan(walks(10, 2, 10, 1, 'a'), walks(50, 2, 9, 1, 'b'), [0.5, 1], 0.1)).toThrow(
      'at least 40 simulated trials, not 10',
    )
    expect(() => sequentialPlan(walks(50, 2, 10, 1, 'a'), walks(50, 1, 9, 1, 'b'), [0.5, 1], 0.1)).toThrow(
      'a count for each of the 2 looks',
    )
  })
})

describe('follow-up', () => {
  const draw = stream('1', 0, 'shifts')
  const forecast = Array.from({ length: 200 }, () => Math.round(332 + 10 * normalQuantile(draw())))
  const week = (index: number, per: number) => ({ name: `W${index + 1}`, units: Math.round(10 * per), shifts: 10 })
  test('weeks as forecast stand, weeks a twentieth below do not', () => {
    expect(
      followUp(
        [0, 1, 2, 3].map((index) => week(index, 331)),
        forecast,
        '1',
      ).state,
    ).toBe('still stands')
    const low = followUp(
      [0, 1, 2, 3].map((index) => week(index, 315)),
      forecast,
      '1',
    )
    expect(low.state).toBe('no longer stands')
    expect(low.weeks.every(({ side }) => side === 'below')).toBe(true)
    expect(low.differenceShare).toBeCloseTo(315 / low.forecastMean - 1, 9)
  })
  test('true weeks are called broken as seldom as said: at most 1 in 200 follow-ups of 4 weeks', { tags: 'long' }, async () => {
    const isBroken = async (of: number): Promise<boolean> => {
      const real = stream('2', of, 'weeks')
      const own = Array.from({ length: 60 }, () => 332 + 10 * normalQuantile(real()))
      const shifts = Array.from({ length: 40 }, () => 332 + 10 * normalQuantile(real()))
      const weeks = [0, 1, 2, 3].map((index) => ({
        name: `${index}`,
        units: Math.round(shifts.slice(10 * index, 10 * index + 10).reduce((a, b) => a + b, 0)),
        shifts: 10,
      }))
      return followUp(weeks, own, '1').state === 'no longer stands'
    }
    expect(await tooOften(isBroken, { promised: 0.005, found: 0.015, falseAlarm: 1e-4, missed: 0.01 })).toBe(false)
  })
  test('one week says nothing; odd weeks are refused', () => {
    expect(followUp([week(0, 300)], forecast, '1').state).toBe('too few weeks')
    expect(() => followUp([{ name: 'W1', units: 10.5, shifts: 1 }], forecast, '1')).toThrow('"W1": a week has whole units')
    expect(() => followUp([], [1, 2], '1')).toThrow('at least 10 simulated shifts')
  })
  test('stations whose work is another than in the model come first, with how many cycles more', () => {
    const model = new Map([
      ['S2', 60.2],
      ['S6', 61.8],
    ])
    const found = stationDeviations(
      [
        { station: 'S2', seconds: 60.9, n: 30, sd: 7 },
        { station: 'S6', seconds: 66, n: 30, sd: 3 },
      ],
      model,
    )
    expect(found.map(({ station, differs }) => [station, differs])).toEqual([
      ['S6', true],
      ['S2', false],
    ])
    // (1.96 · 7/(0.05 · 60.9))² = 20.3
    expect(found[1]!.cyclesFor5).toBe(21)
    expect(() => stationDeviations([{ station: 'S9', seconds: 1, n: 1, sd: 0 }], model)).toThrow('no work at a station "S9"')
  })
})
