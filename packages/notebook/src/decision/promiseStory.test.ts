import { beforeAll, expect, test } from 'vitest'
import { promiseRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import type { PromiseRuns } from './promiseFigures.ts'
import { promiseStory } from './promiseStory.ts'

let runs: PromiseRuns
beforeAll(async () => {
  runs = await promiseRuns(40)
})

test('the first sentence is the promise, with P10 in words and until when it holds', () => {
  const { answer } = promiseStory(runs)
  const { shift } = runs.forecast
  expect(answer.sentences[0]).toContain(`Promised of “zoned loop”: at least ${Math.round(shift.p10!.point)} units in nine of ten shifts`)
  expect(answer.sentences[0]).toContain(`as long as ${runs.section.until}.`)
  expect(toldTwice(promiseStory(runs).cells)).toEqual(TOLD_TWICE)
})
