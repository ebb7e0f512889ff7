import { carrierStays, traceRun } from '@loopwright/study'
import { expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { stretchWords, traceStory } from './traceStory.ts'

const scenario = testLine()
const traced = (await traceRun(scenario.line, { replication: 0 }, { seed: '1' }))!
const stays = carrierStays(traced.trace, scenario.line)
const starts = [
  { seconds: 0, clockSeconds: 6 * 3600 },
  { seconds: 7200, clockSeconds: 8 * 3600 },
]
const options = { scenarioFile: 'ring.yaml', fromSeconds: 7200, toSeconds: 8100 }

test('the heading says what stretch, by the clock of the day where there is one', () => {
  expect(traceStory(scenario, stays, { ...options, shiftStarts: starts }).question).toBe('What happened on the loop from 08:00 to 08:15?')
  expect(traceStory(scenario, stays, options).question).toBe('What happened on the loop from 2 h to 2 h 15 min of the run?')
  expect(stretchWords(3600, 7200, starts)).toBe('07:00 to 08:00')
})

test('what happened first, then the picture, then what one run is', () => {
  const story = traceStory(scenario, stays, { ...options, shiftStarts: starts })
  expect(story.cells.slice(0, 3)).toEqual([story.answer, story.timeline, story.sure])
  expect(story.answer.sentences[0]).toMatch(/^From 08:00 to 08:15 /)
  expect(shownView(story.timeline.views).finding).toMatch(/^Zones over time, 08:00 to 08:15 \(2 h to 2 h 15 min from the start/)
  expect(story.sure.sentences[0]).toMatch(/^One run is one shift that may happen, not a forecast/)
})

test('the zone that is named is the one in which carriers wait longest', () => {
  const [from, to] = [options.fromSeconds, options.toSeconds]
  const waited = scenario.line.zones.map((_, zone) =>
    stays
      .filter((stay) => stay.zone === zone && stay.doneSeconds !== null)
      .reduce((sum, stay) => sum + Math.max(0, Math.min(stay.leaveSeconds ?? to, to) - Math.max(stay.doneSeconds!, from)), 0),
  )
  const most = scenario.line.zones[waited.indexOf(Math.max(...waited))]!.name
  expect(traceStory(scenario, stays, options).answer.sentences[0]).toContain(`carriers wait most in ${most},`)
})
