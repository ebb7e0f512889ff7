import { PLAIN_PATH } from '@loopwright/line'
import { expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/golden/scenario/scenarioText.ts'
import { readScenario } from '../read.ts'

function read(...changes: [string, string][]) {
  const { scenario, problems } = readScenario(scenarioText(...changes), 'x')
  return { paths: scenario?.line.paths ?? [], codes: problems.map((problem) => problem.code) }
}
const plain = { across: false, fromPosition: 'low', toPosition: 'low', moveSeconds: null, clearSeconds: null }

test('path i leaves zone i for the next; distance is the length of the next zone', () => {
  const { paths } = read(['10 zones of 1 m', '[9 × 1 m, 1 × 2 m]'])
  expect(paths[8]).toEqual({
    ...PLAIN_PATH,
    from: 8,
    to: 9,
    distanceMetres: 2,
    speedMetresPerSecond: 0.2,
    accelerationMetresPerSecondSquared: 0.5,
    ...plain,
  })
  expect(paths[9]).toMatchObject({ from: 9, to: 0, distanceMetres: 1 })
})

test('speed and acceleration: the path’s own, else the next zone’s, else the drive’s', () => {
  const { paths } = read(
    ['', 'zones: { Z05: { speed: 0.3 m/s }, Z06: { speed: 0.4 m/s, acceleration: none } }'],
    ['', 'paths: [{ from: Z05, speed: 0.5 m/s, distance: 1.4 m }]'],
  )
  expect(
    paths.slice(3, 6).map((path) => [path.distanceMetres, path.speedMetresPerSecond, path.accelerationMetresPerSecondSquared]),
  ).toEqual([
    [1, 0.3, 0.5],
    [1.4, 0.5, null],
    [1, 0.2, 0.5],
  ])
})

test('given times; a move alone with no speed known is the clear too', () => {
  const own =
    'paths: [{ from: Z05, move: 5..6 s }, { from: Z06, move: 5 s, clear: 4 s }, { from: Z07, move: 5 s, clear: move }, { from: Z08, clear: 3 s }]'
  expect(
    read(['', own])
      .paths.slice(4, 8)
      .map((path) => [path.moveSeconds?.kind ?? null, path.clearSeconds]),
  ).toEqual([
    ['uniform', null],
    ['constant', { kind: 'constant', value: 4 }],
    ['constant', 'move'],
    [null, { kind: 'constant', value: 3 }],
  ])
  const allGiven = `paths:\n${Array.from({ length: 10 }, (_, i) => `  - { from: Z${String(i + 1).padStart(2, '0')}, move: 5 s }\n`).join('')}`
  const { paths, codes } = read(['drive: { speed: 12 m/min, acceleration: 0.5 m/s² }\n', ''], ['', allGiven])
  expect(codes).toEqual([])
  expect(paths.every((path) => path.clearSeconds === 'move' && path.speedMetresPerSecond === null)).toBe(true)
})

test('positions and sideways travel may be given', () => {
  const { paths } = read(
    ['', 'corners: { zones: [Z03, Z06], turn: left, lift: 1 s, lower: 1 s }'],
    ['', 'paths: [{ from: Z02, toPosition: high }, { from: Z03, fromPosition: low, across: false }]'],
  )
  expect([paths[1]?.toPosition, paths[2]?.fromPosition, paths[2]?.across, paths[3]?.across]).toEqual(['high', 'low', false, true])
})

test('what does not make one closed loop is refused', () => {
  const zones = 'zones: { A: { length: 1 m }, B: { length: 1 m }, C: { length: 1 m }, D: { length: 1 m }, E: { length: 1 m } }\n'
  const general = (paths: string): string[] =>
    read(['loop: 10 zones of 1 m\n', `${zones}paths: ${paths}\n`], ['Z01', 'A'], ['Z04', 'B'], ['Z08', 'D']).codes
  const ab = '{ from: A, to: B }, { from: B, to: C }, { from: C, to: D }, { from: D, to: E }'
  expect(general(`[{ from: E, to: A }, ${ab}]`)).toEqual([])
  expect(general(`[${ab}]`)).toEqual(['E_PATH_MISSING'])
  expect(general(`[${ab}, { from: E, to: B }]`)).toEqual(['E_NOT_YET'])
  expect(general(`[${ab}, { from: E, to: A }, { from: A, to: B }]`)).toEqual(['E_PATH_TWICE'])
  expect(general(`[${ab}, { from: E, to: A }, { from: A, to: C }]`)).toEqual(['E_NOT_YET'])
  expect(general(`[${ab}, { from: E, to: Q }]`)).toEqual(['E_UNKNOWN_ZONE'])
})
