import { expect, test } from 'vitest'
import { loopLine, straightLine } from './sketchedLine.ts'

const COMMON = { zones: 3, zoneLength: 2, drive: { speed: 1 }, carriers: { count: 1, length: 1 }, end: 60 }
const constant = (value: number) => ({ kind: 'constant', value })

test('own values of a path, found by where it comes from', () => {
  const [first, second, third] = loopLine({
    ...COMMON,
    paths: [{ from: 'Z02', distance: 3, speed: 0.5, acceleration: 1, across: true, move: 4, clear: 'move' }],
  }).spec.paths
  expect(second).toMatchObject({ distanceMetres: 3, speedMetresPerSecond: 0.5, accelerationMetresPerSecondSquared: 1, across: true })
  expect(second).toMatchObject({ moveSeconds: constant(4), clearSeconds: 'move' })
  expect([first!.distanceMetres, third!.distanceMetres]).toEqual([2, 2])
})

test('a given move is the clear too where no speed is known, or somebody moves the carrier', () => {
  const stations = { S: { zone: 0, load: 1 } }
  const clears = (drive: { speed?: number }, push: boolean) =>
    loopLine({ ...COMMON, drive, stations, paths: [0, 1, 2].map((from) => ({ from, move: 4, ...(push ? { push: 'S' } : {}) })) }).spec
      .paths[push ? 3 : 0]!

  // a way by hand lies beside that of the drive
  expect(clears({}, false).clearSeconds).toBe('move')
  expect(clears({ speed: 1 }, false).clearSeconds).toBeNull()
  expect(clears({ speed: 1 }, true)).toMatchObject({ clearSeconds: 'move', manual: { kind: 'push', station: 0 } })
})

test('whom a path takes, by name', () => {
  const { spec } = loopLine({
    ...COMMON,
    products: { variants: { red: 1, blue: 1 } },
    stations: { S: { zone: 0, load: 1 } },
    paths: [{ from: 'Z01', to: 'Z03', takes: { variants: ['blue'], load: 'loaded', rejected: false, forStation: 'S' } }],
  })
  expect(spec.paths[3]!.takes).toEqual({ variants: [1], load: 'loaded', rejected: false, forStation: 0 })
})

test('the way into the store is as long as the zones, where they are of one length', () => {
  expect(straightLine(COMMON).spec.paths.map(({ distanceMetres }) => distanceMetres)).toEqual([2, 2, 2, 2])
  expect(() => straightLine({ ...COMMON, own: { Z01: { length: 3 } } })).toThrow('how far is it from zone "Z03" to the store?')
})
