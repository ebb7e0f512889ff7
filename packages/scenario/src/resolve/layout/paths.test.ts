import { PLAIN_PATH, STORE } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(...changes: [string, string][]) {
  const { scenario, problems } = readScenario(scenarioText(...changes))
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

const zones = 'zones: { A: { length: 1 m }, B: { length: 1 m }, C: { length: 1 m }, D: { length: 1 m }, E: { length: 1 m } }\n'
const general = (paths: string, ...more: [string, string][]) =>
  read(['loop: 10 zones of 1 m\n', `${zones}paths: ${paths}\n`], ['Z01', 'A'], ['Z04', 'B'], ['Z08', 'D'], ...more)
const ab = '{ from: A, to: B }, { from: B, to: C }, { from: C, to: D }, { from: D, to: E }'

describe('general lines', () => {
  test('paths keep the order in which they are written', () => {
    const { paths, codes } = general(`[{ from: E, to: A }, ${ab}, { from: E, to: B, takes: { load: empty } }]`)
    expect(codes).toEqual([])
    expect(paths.map(({ from, to }) => `${from} ${to}`)).toEqual(['4 0', '0 1', '1 2', '2 3', '3 4', '4 1'])
  })

  test('zones in a row, and the store at the ends', () => {
    const { paths, codes } = general('[store > A > B > C > D > E > store]')
    expect(codes).toEqual([])
    expect(paths.map(({ from, to }) => [from, to])).toEqual([
      [STORE, 0],
      [0, 1],
      [1, 2],
      [2, 3],
      [3, 4],
      [4, STORE],
    ])
    // to the store as far as from zone to zone, all being of one length
    expect(paths.at(-1)?.distanceMetres).toBe(1)
  })

  test('whom a path takes, and who pushes', () => {
    const { paths, codes } = general(
      `[${ab}, { from: E, to: A, takes: { load: loaded, rejected: false, forStation: Fit } }, { from: E, to: C, push: Fit, move: 6 s }]`,
    )
    expect(codes).toEqual([])
    expect(paths[4]!.takes).toEqual({ variants: null, load: 'loaded', rejected: false, forStation: 1 })
    expect(paths[5]).toMatchObject({ manual: { kind: 'push', station: 1 }, clearSeconds: 'move' })
  })

  // MODEL.md §3: the driven way of the loop has the lower index
  test('a push beside the driven way of a loop is never taken', () => {
    const { codes } = read(['', 'paths: [{ from: Z05, push: Fit, move: 6 s }]'])
    expect(codes).toEqual(['W_WAY_NEVER_TAKEN'])
  })

  test('beside a loop: more ways, and zones that say how long they are', () => {
    const { paths, codes } = read([
      '',
      'zones: { R1: { length: 2 m }, Z05: { divert: alternate } }\npaths: [Z05 > R1 > Z06, { from: Z02, speed: 5 m/min }]',
    ])
    expect(codes).toEqual([])
    expect(paths).toHaveLength(12)
    expect(paths.slice(10).map(({ from, to, distanceMetres }) => [from, to, distanceMetres])).toEqual([
      [4, 10, 2],
      [10, 5, 1],
    ])
    expect(paths[1]!.speedMetresPerSecond).toBeCloseTo(5 / 60, 12)
  })

  test('what is wrong with a way is said', () => {
    expect(general(`[${ab}]`).codes).toEqual(['W_ZONE_WITHOUT_WAY', 'W_ZONE_WITHOUT_WAY'])
    expect(general(`[${ab}, { from: E, to: A }, { from: A, to: B }]`).codes).toEqual(['E_PATH_TWICE'])
    expect(general(`[${ab}, { from: E, to: Q }]`).codes).toEqual(['E_UNKNOWN_ZONE'])
    expect(general(`[${ab}, E > Q]`).codes).toEqual(['E_UNKNOWN_ZONE'])
    expect(general(`[${ab}, E >]`).codes).toEqual(['E_PATH_CHAIN'])
    expect(general(`[${ab}, E > E]`).codes).toEqual(['E_PATH_TO_ITSELF'])
    expect(general(`[${ab}, { from: E, to: A, push: Fit }]`).codes).toEqual(['E_MANUAL_MOVE'])
    expect(general(`[${ab}, { from: E, to: A, takes: { forStation: Fti } }]`).codes).toEqual(['E_UNKNOWN_STATION'])
    expect(general('[]').codes).toEqual(['E_PATHS_MISSING'])
  })
})
