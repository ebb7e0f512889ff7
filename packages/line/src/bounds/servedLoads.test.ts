import { expect, test } from 'vitest'
import { graphLine, loopLine } from '../builder/sketchedLine.ts'
import type { LineSketch } from '../builder/sketch.ts'
import { servedLoads } from './servedLoads.ts'

const COMMON = { zoneLength: 2, drive: { speed: 1 }, carriers: { count: 1, length: 1 }, end: 60 }
const ring = (stations: NonNullable<LineSketch['stations']>): number[] => servedLoads(loopLine({ ...COMMON, zones: 6, stations }).spec)

test('of a loop: the first behind each unload station', () => {
  const stations = { first: { zone: 'Z02', load: 10 }, second: { zone: 'Z03', load: 10 }, out: { zone: 'Z05', unload: 10 } }
  expect(ring(stations)).toEqual([0])
  expect(ring({ ...stations, between: { zone: 'Z06', load: 10 } })).toEqual([3])
})

test('one that takes off before it loads needs no empty carrier', () => {
  expect(ring({ first: { zone: 'Z02', load: 10 }, both: { zone: 'Z05', unload: 5, load: 10 } })).toEqual([1])
  expect(ring({ only: { zone: 'Z02', unload: 5, load: 10 } })).toEqual([0])
})

test('nothing is ever taken off: none is left out', () =>
  expect(ring({ a: { zone: 'Z02', load: 1 }, b: { zone: 'Z03', load: 1 } })).toEqual([0, 1]))

test('beside each other: all that a way of empty carriers leads to', () => {
  const fork = (takes: object): number[] =>
    servedLoads(
      graphLine({
        ...COMMON,
        carriers: { count: 2, length: 1, start: 'store' },
        zones: ['A', 'B', 'C', 'D', 'E'],
        paths: ['store > A > B > D > E > store', { from: 'A', to: 'C', takes }, 'C > D'],
        products: { variants: { small: 1, large: 1 } },
        stations: { left: { zone: 'B', load: 10 }, right: { zone: 'C', load: 10 }, out: { zone: 'E', unload: 5 } },
      }).spec,
    )
  expect(fork({})).toEqual([0, 1])
  expect(fork({ load: 'empty' })).toEqual([0, 1])
  expect(fork({ load: 'loaded' })).toEqual([0])
  expect(fork({ variants: ['large'] })).toEqual([0])
})
