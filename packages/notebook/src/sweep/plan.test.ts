import { readScenario } from '@loopwright/scenario'
import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { period } from './period.ts'
import { occupancyPlan, planZones } from './plan.ts'

const YAML = `
format: 1
name: Rectangle
question: How many?
warmup: 10 min
length: 40 min
drive: { speed: 30 m/min, acceleration: 0.5 m/s² }
carriers: { count: 2, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
corners: { zones: [Z01, Z04, Z06, Z09], turn: right, lift: 1 s, lower: 1 s, enterOnlyIfExitClear: true }
stations:
  S1: { name: Load and unload, zone: Z02, unload: { takeOff: 5 s }, load: { place: 6 s } }
`

const { scenario, problems } = readScenario(YAML)

test('zones as they lie, with their turns, transfers and stations; unshaded without a count', () => {
  expect(problems).toEqual([])
  const zones = planZones(scenario!, null)
  expect(zones.map(({ turn }) => turn === 'right')).toEqual([0, 3, 5, 8].reduce((all, at) => all.with(at, true), new Array(10).fill(false)))
  expect(zones[1]!.station).toEqual({ key: 'S1', title: 'Load and unload', duties: ['load', 'unload'] })
  expect(zones.every(({ value, label }) => value === null && label === null)).toBe(true)
})

/** By hand: of the zones that are no corners, Z02 Z03 Z05 Z07 Z08 Z10, three carriers stand in the ⌊c·6/3⌋-th: MODEL.md §10. */
test('the carriers stand where a run with so many of them begins, beside the numbers of the zones', async () => {
  const { counts } = await sweepCarriers(scenario!.line, { counts: [3], replications: 2 }, { seed: '1', workers: 0 })
  const { picture, alt, howToRead } = occupancyPlan(scenario!, counts[0]!, period(scenario!))
  const zones = picture.kind === 'plan' ? picture.zones : []
  expect(zones.filter(({ starts }) => starts === true).map(({ name }) => name)).toEqual(['Z02', 'Z05', 'Z08'])
  expect(zones.every(({ label }) => label !== null)).toBe(true)
  expect(alt).toContain('Carriers at the start in Z02, Z05, Z08.')
  expect(howToRead).toContain('where the carriers stand when a run begins')
})

test('the fullest zones are named; the table has every zone with the number drawn in it', async () => {
  const { counts } = await sweepCarriers(scenario!.line, { counts: [3], replications: 2 }, { seed: '1', workers: 0 })
  const [count] = counts
  const figure = occupancyPlan(scenario!, count!, period(scenario!))
  const fullest = count!.zones.toSorted((a, b) => b.occupancyMean - a.occupancyMean)[0]!
  expect(figure.finding).toMatch(new RegExp(`^The loop: 10 zones, 10 m\\. With 3 carriers the fullest are ${fullest.name}`))
  expect(figure.table.rows.map(({ cells }) => cells[4])).toEqual(
    count!.zones.map(({ occupancyMean }) => String(Math.round(occupancyMean * 100))),
  )
  expect(figure.table.rows.map(({ cells }) => cells[2]).slice(0, 3)).toEqual(['transfer', 'station Load and unload', 'storage'])
  const place = figure.table.columns.flatMap(({ fields }) => fields).findIndex(({ name }) => name === 'occupancy_mean')
  expect(figure.table.rows.map(({ values }) => values[place])).toEqual(count!.zones.map(({ occupancyMean }) => occupancyMean))
})
