import { readScenario, type Scenario } from '@loopwright/scenario'
import { type SweepResult, sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { carrierSweepStory } from './carrierSweepStory.ts'

const YAML = `
format: 1
name: Rectangle
question: How many?
warmup: 10 min
length: 70 min
plan: 150 per clock hour
drive: { speed: 30 m/min, acceleration: 0.5 m/s² }
carriers: { count: 2, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
corners: { zones: [Z01, Z04, Z06, Z09], turn: right, lift: 1 s, lower: 1 s, enterOnlyIfExitClear: true }
stations:
  S1: { name: Load and unload, zone: Z02, unload: { takeOff: 5 s }, load: { place: 6 s ± 20 % } }
  S2: { name: Fit, zone: Z07, work: { fit: 12 s ± 20 % } }
stops:
  jam: { at: S2, after: exponential 20 min, lasts: 30 s }
`

function scenario(): Scenario {
  const { scenario: found, problems } = readScenario(YAML)
  if (found === null) throw new Error(JSON.stringify(problems))
  return found
}

async function sweep(counts: readonly number[], replications: number): Promise<SweepResult> {
  return await sweepCarriers(scenario().line, { counts, replications, plan: 150 }, { seed: '1', workers: 0 })
}

const options = { scenarioFile: 'scenarios/rectangle.yaml' }

test('every cell that follows the choice has a view for every count, and shows the answer first', async () => {
  const result = await sweep([1, 2, 3, 4], 4)
  const story = carrierSweepStory(scenario(), result, options)
  for (const cell of [story.stations, story.plan, story.occupancy, story.byHour, story.distribution, story.stops]) {
    expect(cell.views.choice, cell.id).toBe(story.choice.id)
    expect(cell.views.of.map(({ key }) => key)).toEqual(['1', '2', '3', '4'])
    expect(cell.views.shown).toBe(String(result.answer!.chosen))
    expect(cell.views.of.every(({ content }) => content.finding !== '' && content.alt !== '' && content.table.rows.length > 0)).toBe(true)
  }
  expect(story.choice.options.map(({ key }) => key)).toEqual(['1', '2', '3', '4'])
})

test('the cells of the page begin with the answer and end with the cautions; ids are unique', async () => {
  const { cells } = carrierSweepStory(scenario(), await sweep([1, 2, 3], 4), options)
  expect(cells[0]!.id).toBe('answer')
  expect(cells.at(-1)!.kind).toBe('caution')
  expect(new Set(cells.map(({ id }) => id)).size).toBe(cells.length)
})

test('a single replication tells what it can, and gives no answer', async () => {
  const story = carrierSweepStory(scenario(), await sweep([1, 2], 1), options)
  expect(story.answer.sentences[0]).toMatch(/^No answer yet/)
  expect(story.choice.shown).toBe('1')
  expect(story.throughput.views.of[0]!.content.table.rows[0]!.cells[3]).toBe('–')
})

test('a loop that stands still is told as such', async () => {
  const story = carrierSweepStory(scenario(), await sweep([5, 6], 3), options)
  expect(story.warnings.map(({ id }) => id)).toContain('warning-gridlock')
})

test('without a replication there is no story', async () => {
  const two = await sweep([2], 2)
  const none = { ...two, counts: two.counts.map((count) => ({ ...count, replications: 0 })) }
  expect(() => carrierSweepStory(scenario(), none, options)).toThrow(RangeError)
})

test('a line that unloads nothing has charts of its stations all the same', async () => {
  const { scenario: found } = readScenario(YAML.replace('unload: { takeOff: 5 s }, ', ''))
  const result = await sweepCarriers(found!.line, { counts: [2, 3], replications: 2 }, { seed: '1', workers: 0 })
  const { stations } = carrierSweepStory(found!, result, options)
  expect(stations.views.of.map(({ content }) => content.table.rows.length)).toEqual([2, 2])
})
