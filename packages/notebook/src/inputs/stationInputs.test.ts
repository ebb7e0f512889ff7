import { type LineSpec, stationWords } from '@loopwright/line'
import { mixShares } from '@loopwright/line/bounds'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { stationInputs, variantInputs } from './stationInputs.ts'

const YAML = `
format: 1
name: Mixed
question: How many?
warmup: 0 s
length: 1 h
drive: { speed: 15 m/min }
carriers: { count: 2, length: 0.8 m }
loop: 6 zones of 1 m
products: { mix: random, variants: { red: 3, blue: 1 } }
stations:
  S1: { zone: Z01, unload: { takeOff: 12 s }, load: { place: 20 s } }
  S2: { name: Oven, zone: Z04, work: { bake: 30..60 s } }
`

function line(): LineSpec {
  const { scenario, problems } = readScenario(YAML)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return scenario.line
}

test('shares are those of the long run, whatever the kind of mix', () => {
  const pattern = { ...line(), mix: { kind: 'pattern', sequence: [0, 1, 1, 1] } } as const
  expect(mixShares(line().mix, 2)).toEqual([0.75, 0.25])
  expect(mixShares(pattern.mix, 2)).toEqual([0.25, 0.75])
  const told = (of: LineSpec): unknown[] => variantInputs(of).rows.map(({ cells }) => cells[1])
  expect(told(line())).toEqual(['75 %', '25 %'])
  expect(told(pattern)).toEqual(['25 %', '75 %'])
})

test('duties in their order, means added up, release beside them', () => {
  const [load, oven] = stationInputs(line()).rows.map(({ cells }) => cells)
  expect(load!.slice(0, 5)).toEqual(['S1', 'Z01', 'unload, load', '32', '0 %'])
  expect(oven!.slice(0, 4)).toEqual(['S2 Oven', 'Z04', 'work', '45'])
  expect(oven![4]).toBe('19.2 %')
})

test('who works there', () => {
  const automatic = { ...line(), stations: line().stations.map((station) => ({ ...station, operatorsNeeded: 0 })) }
  expect(stationInputs(automatic).rows.map(({ cells }) => cells.at(-1))).toEqual(['automatic', 'automatic'])
})

test('how variants come is part of the caption', () => {
  expect(variantInputs(line()).caption).toBe('Mix: variants at random by share; mean task times')
  expect(variantInputs({ ...line(), mix: { kind: 'list', sequence: [0, 0, 1] } }).caption).toBe(
    'Mix: a list of 3 products; mean task times',
  )
  expect(variantInputs(line()).note).toBe('Distribution of the times: constant, uniform.')
})

test('a title that repeats the name is said once', () => {
  expect(stationWords({ name: 'S1', title: 'S1' })).toBe('S1')
})
