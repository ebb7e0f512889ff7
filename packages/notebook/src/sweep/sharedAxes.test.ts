import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { carrierSweepStory } from './carrierSweepStory.ts'
import { sharedAxes } from './sharedAxes.ts'

const scenario = testLine()
const sweep = await sweepCarriers(scenario.line, { counts: [2, 3, 4], replications: 6, plan: 250 }, { seed: '1', workers: 0 })
const starts = [{ seconds: 0, clockSeconds: 6 * 3600 }]

test('they hold what any count needs: hours, units, stops', () => {
  const { hours, spread, stops } = sharedAxes(scenario, sweep.counts, starts)
  expect(spread.unitsSpan).toEqual([
    Math.min(...sweep.counts.flatMap(({ units }) => units)),
    Math.max(...sweep.counts.flatMap(({ units }) => units)),
  ])
  expect(hours.unitsMax).toBe(Math.max(...sweep.counts.flatMap(({ outputByHour }) => outputByHour)))
  expect(stops.secondsMax).toBeGreaterThanOrEqual(
    Math.max(...sweep.counts.map(({ stoppedBy }) => stoppedBy.find(({ cause }) => cause === 'tool')!.seconds)),
  )
  // the second shift begins at 08:00, its break an hour later
  expect([hours.startClock, hours.breaks]).toEqual(['08:00', [{ startSeconds: 3600, lengthSeconds: 600 }]])
  expect(sharedAxes(scenario, sweep.counts, []).hours.startClock).toBeUndefined()
})

test('every view of the page has the same axes, and those of another count have the answer behind them', () => {
  const story = carrierSweepStory(scenario, sweep, { scenarioFile: 'ring.yaml' })
  for (const chart of [story.byHour, story.distribution, story.stops]) {
    const axes = chart.views.of.map(({ content: { picture } }) =>
      picture.kind === 'drawing' ? [picture.drawing.across.from, picture.drawing.across.to] : null,
    )
    expect(new Set(axes.map(String)).size, chart.id).toBe(1)
  }
  const ghosts = story.distribution.views.of.map(({ key, content }) => [key, content.howToRead.includes('Outlined')])
  expect(ghosts).toEqual(['2', '3', '4'].map((key) => [key, key !== story.distribution.views.shown]))
})
