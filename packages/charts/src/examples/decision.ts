import type { Figure } from '../draw/figure.ts'
import { countedWeeks } from '../decision/countedWeeks.ts'
import { criteriaCases, type WeightChange } from '../decision/criteriaCases.ts'
import { criteriaWins } from '../decision/criteriaWins.ts'
import { rampUpChart } from '../decision/rampUpChart.ts'
import { timeLosses } from '../decision/timeLosses.ts'
import { trialLooks } from '../decision/trialLooks.ts'
import { workDeviations } from '../decision/workDeviations.ts'

/** Invented. */
export const criteriaWinsExample = (): Figure =>
  criteriaWins(
    [
      { name: 'push line', misses: ['makes the plan in half of the shifts'], total: 3.04, wins: 0, first: false },
      { name: 'powered rollers', misses: [], total: 3.89, wins: 0.43, first: false },
      { name: 'zoned loop', misses: [], total: 3.96, wins: 0.91, first: true },
      { name: 'guided vehicles', misses: ['fits between the columns of the hall'], total: 2.75, wins: 0, first: false },
    ],
    { swing: 0.3, draws: 2000, ties: 0.34 },
  )

/** Invented. */
export const criteriaCasesExample = (): Figure =>
  criteriaCases(
    ['output', 'payback', 'handling', 'new variants'].flatMap((criterion, row) =>
      (['more', 'less', 'left out'] as const).map((change: WeightChange) => ({
        criterion,
        change,
        winners:
          row === 3 && change !== 'more'
            ? ['powered rollers']
            : row < 2 && change === 'more'
              ? ['powered rollers', 'zoned loop']
              : ['zoned loop'],
      })),
    ),
    { agreed: ['zoned loop'], by: '30 %' },
  )

/** Invented. */
export const rampUpExample = (): Figure =>
  rampUpChart(
    [1.32, 1.17, 1.1, 1.06, 1.03, 1.001].map((factor, index) => ({
      week: index + 1,
      factor,
      units: Math.round(3340 / factor),
      low: Math.round((0.97 * 3340) / factor),
    })),
    { standard: 3340, plan: 3200 },
  )

/** Invented. */
export const trialLooksExample = (): Figure =>
  trialLooks(
    [16, 37, 59, 81, 102, 123, 143, 164].map((low, index) => ({
      seconds: 1800 * (index + 1),
      limit: index === 0 ? null : low - 4,
      caught: 0.08 * (index + 1),
      low,
      middle: low + 4,
      high: low + 7 + index,
      count: [18, 39, 54, null, null, null, null, null][index]!,
    })),
    { caption: 'Counts beside the limits', note: '', counts: true },
  )

/** Invented. */
export const countedWeeksExample = (): Figure =>
  countedWeeks(
    [3310, 3205, 2540, 3290, 3180].map((units, index) => {
      const shifts = index === 2 ? 8 : 10
      const [expected, half] = [330 * shifts, 60]
      return {
        name: `W${index + 40}`,
        units,
        shifts,
        expected,
        low: expected - half,
        high: expected + half,
        side: units < expected - half ? 'below' : 'within',
      }
    }),
    { plan: 320 },
  )

/** Invented. */
export const timeLossesExample = (): Figure =>
  timeLosses(
    [
      { name: 'exchanging carriers', seconds: 3900 },
      { name: 'leak in the tester', seconds: 1100 },
      { name: 'short stops', seconds: 480 },
      { name: 'blocked', seconds: 420 },
      { name: 'starved', seconds: 300 },
      { name: 'waiting for operator', seconds: 20 },
    ],
    { station: 'Tightness test', planned: 27_000, per: 'shift' },
  )

/** Invented. */
export const workDeviationsExample = (): Figure =>
  workDeviations([
    { station: 'S6', seconds: 66.2, modelSeconds: 61.8, n: 40, sd: 2.6, standardErrors: 10.7, differs: true, cyclesFor5: 3 },
    { station: 'S4', seconds: 57.2, modelSeconds: 59.4, n: 12, sd: 7.1, standardErrors: -1.1, differs: false, cyclesFor5: 24 },
    { station: 'S2', seconds: 60.9, modelSeconds: 60.2, n: 30, sd: 3.3, standardErrors: 1.2, differs: false, cyclesFor5: 5 },
  ])
