import { traceRun } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { tracePauses } from './tracePauses.ts'

const STOPS = `stops:
  jam: { at: S3, after: 20 min, lasts: 3 min }
  belt: { at: line, after: 50 min, lasts: 2 min }
`
const pausesOf = async (text: (yaml: string) => string) => {
  const scenario = testLine(text)
  const { trace } = (await traceRun(scenario.line, { replication: 0 }, { seed: '1', workers: 0 }))!
  return { scenario, pauses: tracePauses(trace, scenario) }
}

test('a break holds the work of every station, and moves only where the conveyor stops with it', async () => {
  const { scenario, pauses } = await pausesOf((yaml) => yaml)
  const breaks = pauses.filter(({ name }) => name === 'break')
  expect(breaks.map(({ from, to }) => [from, to])).toEqual(
    scenario.line.breaks.map(({ startSeconds, lengthSeconds }) => [startSeconds, startSeconds + lengthSeconds]),
  )
  expect(breaks[0]!.work).toEqual(scenario.line.stations.map(({ zone }) => zone))
  expect(breaks[0]!.moves).toHaveLength(scenario.line.conveyorDuringBreaks ? 0 : scenario.line.zones.length)
})

test('a stop of a station holds its work, one of the whole line its moves; each lasts as long as it is given', async () => {
  const { scenario, pauses } = await pausesOf((yaml) => yaml.replace(/stops:[\s\S]*/, STOPS))
  const ZONE = scenario.line.stations.find(({ name }) => name === 'S3')!.zone
  const jam = pauses.find(({ name }) => name === 'jam')!
  expect([jam.zones, jam.work, jam.moves, jam.to - jam.from]).toEqual([[ZONE], [ZONE], [], 180])
  const belt = pauses.find(({ name }) => name === 'belt')!
  expect([belt.zones, belt.work, belt.moves.length, belt.to - belt.from]).toEqual([null, [], scenario.line.zones.length, 120])
})
