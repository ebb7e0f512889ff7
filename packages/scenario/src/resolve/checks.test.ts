import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'

const codes = (...changes: [string, string][]) => readScenario(scenarioText(...changes)).problems.map((problem) => problem.code)
const corner = (clear: boolean): [string, string] => [
  '',
  `corners: { zones: [Z03, Z05, Z08, Z10], turn: left, lift: 1 s, lower: 1 s, enterOnlyIfExitClear: ${clear} }`,
]

test('how many carriers: fewer than zones, at most one per storage zone at the start, and one free for movement', () => {
  expect(codes(['count: 4', 'count: 9'])).toEqual([])
  expect(codes(['count: 4', 'count: 10'])).toEqual(['E_CARRIERS_FILL'])
  expect(codes(['count: 4', 'count: 7'], corner(true))).toEqual(['E_CARRIERS_PLACE'])
  expect(codes(['count: 4', 'count: 6'], corner(true))).toEqual(['W_GRIDLOCK'])
  expect(codes(['count: 4', 'count: 5'], corner(true))).toEqual([])
  expect(codes(['count: 4', 'count: 9'], corner(false))).toEqual([])
})

test('between corners the width is the length in travel', () => {
  expect(codes(['width: 0.8 m', 'width: 1.1 m'])).toEqual([])
  expect(codes(['width: 0.8 m', 'width: 1.1 m'], corner(false))).toEqual(['E_CARRIER_LONG'])
})

test('a sensor must lie less than a carrier before the stop point, unless the clear time is given or by train', () => {
  const early: [string, string] = ['acceleration: 0.5 m/s²', 'acceleration: 0.5 m/s², sensorBeforeStop: 0.8 m']
  expect(codes(early)).toEqual(['E_SENSOR'])
  expect(codes(early, ['12 m/min', '12 m/min, release: train'])).toEqual([])
})

test('what the drive must give: a speed, unless all times are given', () => {
  expect(codes(['speed: 12 m/min, ', ''])).toEqual(['E_SPEED_NEEDED'])
  expect(codes(['speed: 12 m/min, ', ''], ['length: 0.8 m, ', ''])).toEqual(['E_SPEED_NEEDED', 'E_CARRIER_SIZE'])
})

test('a clear time longer than the longest work is doubtful', () => {
  // clear from rest: 0.8 m / 0.02 m/s + 0.02 / (2 · 0.5) s + 0.1 s = 40.12 s; longest work 40 s
  expect(codes(['12 m/min', '1.2 m/min'])).toEqual(['W_CLEAR_LONG'])
  expect(codes(['12 m/min', '1.2 m/min'], ['40 s ± 10 %', '41 s'])).toEqual([])
})

test('nobody loads, nobody unloads: it runs', () => {
  expect(codes(['load: {', 'work: {'])).toEqual(['W_NO_LOAD'])
  expect(codes(['unload: {', 'work: {'])).toEqual(['W_NO_UNLOAD'])
})

test('moves that take no time would go round for ever within one instant', () => {
  const move = (time: string) =>
    Array.from({ length: 10 }, (_, i) => `{ from: Z${String(i + 1).padStart(2, '0')}, move: ${time} }`).join(', ')
  expect(codes(['', `paths: [${move('0 s')}]`])).toEqual(['E_NO_MOVE_TIME'])
  expect(codes(['', `paths: [${move('0 s').replace('0 s', '1 ms')}]`])).toEqual([])
})
