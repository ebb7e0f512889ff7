import { replicate, runsResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { type RunsStory, runsStory } from './runsStory.ts'
import { runSentences } from './runWords.ts'

const scenario = testLine()
const options = { scenarioFile: 'ring.yaml' }

async function told(replications: number, of = scenario): Promise<RunsStory> {
  const runs = await replicate(of.line, { replications }, { seed: '1', workers: 0 })
  const result = runsResult(of.line, runs, { seed: '1', replications, plan: of.plan?.unitsPerWindow ?? null })
  return runsStory(of, result, replications === 1 ? runs[0]! : null, options)
}

const ids = ({ cells }: RunsStory): string[] => cells.map(({ id }) => id)

test('one run tells itself, what it made in full, and that it is no forecast', async () => {
  const story = await told(1)
  const run = (await replicate(scenario.line, { replications: 1 }, { seed: '1', workers: 0 }))[0]!
  expect(story.question).toBe('What does the ring make?')
  expect(story.answer.sentences).toEqual(runSentences(scenario, run))
  expect(story.sure.sentences[0]).toContain('no forecast')
  expect(story.cells.at(0)).toBe(story.answer)
  expect(ids(story)).toEqual(expect.arrayContaining(['stations', 'outputs', 'station_seconds', 'stop_seconds']))
  expect(ids(story)).not.toContain('spread')
  expect(new Set(ids(story)).size).toBe(story.cells.length)
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
})

test('several runs tell their mean, how single shifts differ, and the output of each', async () => {
  const story = await told(5)
  expect(story.answer.sentences.join(' ')).toMatch(/With 4 carriers the loop makes [\d.]+ units a shift on average/)
  expect(story.data).toEqual([])
  expect(ids(story)).toEqual(expect.arrayContaining(['stations', 'spread', 'units']))
  expect(story.warnings.map(({ id }) => id)).not.toContain('warning-upper-end')
  expect(story.standstill).toBeNull()
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
})

test('a run that stood still shows the circle of zones that wait for each other, once', async () => {
  const run = (await replicate(scenario.line, { replications: 1 }, { seed: '1', workers: 0 }))[0]!
  const waits = Array.from({ length: 10 }, (_, zone): [number, number] => [zone, (zone + 1) % 10])
  const still = { ...run, end: { reason: 'gridlock', atSeconds: 750, waits, cycle: waits.map(([zone]) => zone), unmanned: [] } as const }
  const result = runsResult(scenario.line, [still], { seed: '1', replications: 1, plan: null })
  const story = runsStory(scenario, result, still, options)
  expect(story.answer.sentences[0]).toMatch(/^GRIDLOCK after 12\.5 min/)
  expect(story.standstill?.id).toBe('standstill')
  expect(ids(story)).toContain('standstill')
  expect(story.warnings.map(({ id }) => id)).not.toContain('warning-gridlock')
})
