import { describe, expect, test } from 'vitest'
import { madeUpTrials } from '../../../../tests/helpers/decisionRuns.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { acceptanceOf } from './acceptanceStory.ts'
import { trialOf, trialStory } from './trialStory.ts'

const result = acceptanceOf({ share: 0.9, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, madeUpTrials())

describe('a trial while it runs', () => {
  test.each([
    [[40], 'The trial may end: at 30 min fewer than', 'may end'],
    [[52], 'The trial goes on: 52 units after 30 min', 'goes on'],
    [[52, 103], 'No look ended the trial: 103 units after 60 min', 'was not ended'],
    [[52, 190], '190 units after 60 min are more than the band of 100 to 104', 'look again'],
  ])('%j', (counts, says, state) => {
    const { answer, cells } = trialStory('loop', trialOf(counts, result))
    expect(answer.sentences[0]).toContain(says)
    expect(answer.figures!.slice(0, 2).map(({ value }) => value)).toEqual([state, String(counts.at(-1))])
    expect(toldTwice(cells)).toEqual(TOLD_TWICE)
  })
})
