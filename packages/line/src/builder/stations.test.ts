import { expect, test } from 'vitest'
import { sentences } from '../check/sentences.ts'
import { createReport } from './report.ts'
import type { LineSketch } from './sketch.ts'
import { stationsOf, supplyOf } from './stations.ts'
import { namesOf } from './values.ts'

const constant = (value: number) => ({ kind: 'constant', value })
const zones = namesOf(['Z01', 'Z02'], sentences.unknownZone)
const variants = namesOf(['a', 'b'], sentences.unknownVariant)
const of = (stations: LineSketch['stations'], tasks?: readonly string[]) =>
  stationsOf(createReport(), { zones: 2, carriers: 1, end: 1, stations, tasks } as LineSketch, zones, variants)

test('tasks have the order in which they appear, or the one that is given', () => {
  const stations = { S1: { zone: 'Z01', load: { place: 2 }, work: 3 }, S2: { zone: 'Z02', work: { fit: 4 }, unload: {} } }
  expect(of(stations).tasks).toEqual(['place', 'work S1', 'fit'])
  const {
    stations: [first, second],
  } = of(stations, ['fit', 'place', 'work S1'])
  expect([first!.load, first!.work]).toEqual([
    [{ task: 1, seconds: [constant(2), constant(2)] }],
    [{ task: 2, seconds: [constant(3), constant(3)] }],
  ])
  expect([second!.unload, second!.load, second!.work]).toEqual([[], null, [{ task: 0, seconds: [constant(4), constant(4)] }]])
})

test('times by variant, in their order or by name', () => {
  const seconds = [constant(5), null]
  const {
    stations: [station],
  } = of({ S1: { zone: 0, work: { listed: [5, null], named: { b: null, a: 5 } } } })
  expect(station!.work).toEqual([
    { task: 0, seconds },
    { task: 1, seconds },
  ])
})

test('an automatic station needs nobody; receiver, safety stop and supply as they are said', () => {
  const {
    stations: [station],
  } = of({
    S1: {
      zone: 0,
      load: 1,
      automatic: true,
      worksInBreaks: true,
      receiver: { cycle: 9 },
      safetyStop: { chance: 0.1, reset: 5 },
      supply: { every: 30, queue: 2 },
    },
  })
  expect(station).toMatchObject({
    operatorsNeeded: 0,
    worksInBreaks: true,
    receiver: { cycleSeconds: constant(9), queue: 0 },
    safetyStop: { probability: 0.1, resetSeconds: constant(5) },
    supply: { name: 'supply/S1', arrivals: { kind: 'every', seconds: constant(30) }, queueLimit: 2 },
  })
})

test('products at given instants', () => {
  expect(supplyOf(createReport(), 'supply', { name: 'truck', times: [0, 5] }, 'supply')).toEqual({
    name: 'truck',
    arrivals: { kind: 'list', instants: [0, 5] },
    queueLimit: null,
  })
})
