import { readScenario } from '@loopwright/scenario'
import { withCarriers } from '@loopwright/study/change'
import { expect, test } from 'vitest'
import { RING, testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { gridLines } from './gridLines.ts'

const scenario = testLine()
const source = { scenario, text: RING, files: () => null, changePrefix: '--set ' }

test('every setting is the file with its values written in', () => {
  const { factors, points, problems } = gridLines(source, {
    carriers: [3, 5],
    set: { 'drive.speed': ['20 m/min', '30 m/min'], plan: ['240 per shift'] },
  })
  expect(problems).toEqual([])
  expect(factors.map(({ name }) => name)).toEqual(['carriers', 'drive.speed', 'plan'])
  const written = (speed: string, count: number) => withCarriers(readScenario(RING.replace('30 m/min', speed)).scenario!.line, count)
  expect(points).toEqual([3, 5].flatMap((count) => ['20 m/min', '30 m/min'].map((speed) => ({ line: written(speed, count), plan: 240 }))))
})

test('carriers.count is the number of carriers; twice is refused', () => {
  const { factors, points } = gridLines(source, { set: { 'carriers.count': ['3', 4] } })
  expect(factors).toEqual([{ name: 'carriers', levels: ['3', '4'] }])
  expect(points.map(({ line }) => line.carriers.count)).toEqual([3, 4])
  expect(() => gridLines(source, { carriers: [3], set: { 'carriers.count': [4] } })).toThrow('given twice')
})

test('every wrong level is told, each once, with its place', () => {
  const { points, problems } = gridLines(source, {
    carriers: [3, 4],
    set: { 'drive.sped': ['1 m/s'], 'drive.speed': ['20 m/min', '25 m/mn', '26'] },
  })
  expect(points).toEqual([])
  expect(problems.map(({ code, change, column }) => [code, change, column])).toEqual([
    ['E_UNKNOWN_KEY', '--set drive.sped=1 m/s', 7],
    ['E_UNIT_UNKNOWN', '--set drive.speed=25 m/mn', 22],
    ['E_BARE_NUMBER', '--set drive.speed=26', 19],
  ])
})

test('levels that are right alone and wrong together are told too', () => {
  const { points, problems } = gridLines(source, { set: { 'stations.S2.zone': ['Z04', 'Z05'], 'stations.S3.zone': ['Z05', 'Z07'] } })
  expect(points).toEqual([])
  expect(problems).toHaveLength(1)
  expect(problems[0]!.message + problems[0]!.change).toContain('Z05')
})

test('refused before anything is read', () => {
  expect(() => gridLines(source, {})).toThrow('a grid varies something')
  expect(() => gridLines(source, { set: { 'drive.speed': [] } })).toThrow('drive.speed has no level')
  expect(() => gridLines(source, { set: { 'drive.speed': ['1 m/s', '1 m/s'] } })).toThrow('has the level 1 m/s twice')
  const many = Array.from({ length: 30 }, (_, index) => `${index + 1} s`)
  expect(() => gridLines(source, { set: { 'drive.reaction': many, 'drive.stagger': many } })).toThrow(
    '30 × 30 = 900 settings is too large: at most 500',
  )
  expect(() => gridLines(source, { carriers: [3, 40] })).toThrow('takes 1 to 9 carriers, not 40')
})
