import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import type { CarrierStay } from '@loopwright/study'
import { expect, test } from 'vitest'
import { cornersOf, timeline } from './timeline.ts'

const zones = ['A', 'B', 'C']
const stay = (carrier: number, zone: number, enter: number, rest: number, work: number, leave: number | null): CarrierStay => ({
  carrier,
  zone,
  enterSeconds: enter,
  restSeconds: rest,
  works: work > 0 ? [[rest, rest + work]] : [],
  doneSeconds: rest + work,
  leaveSeconds: leave,
})
// carrier 0 is worked on in A, waits there, goes to B and C and begins a new lap; carrier 1 stands in C
const STAYS = [
  stay(0, 0, 0, 0, 60, 90),
  stay(1, 2, 0, 0, 0, 100),
  stay(0, 1, 90, 100, 0, 100),
  stay(0, 2, 100, 110, 0, 110),
  stay(0, 0, 110, 120, 0, null),
]
const figure = timeline(STAYS, { zones, fromSeconds: 30, toSeconds: 150 })

test('corners of a line: where it stands and where it leaves; a new line where a lap ends', () => {
  const own = cornersOf(STAYS, 30, 150).flatMap(({ carrier, leg, seconds, zone }) =>
    carrier === 0 ? [[`${carrier} ${leg}`, seconds, zone]] : [],
  )
  expect(own).toEqual([
    ['0 0', 30, 0],
    ['0 0', 90, 0],
    ['0 0', 100, 1],
    ['0 0', 110, 2],
    ['0 1', 120, 0],
    ['0 1', 150, 0],
  ])
})

test('the finding tells where carriers wait most, and the longest wait, within the stretch', () => {
  // A: 30 s of carrier 0 before it leaves, 30 s at the end; C: 70 s of carrier 1
  expect(figure.finding).toBe('From 0.5 to 2.5 min carriers wait most in C, 70 s in all; the longest wait is that of carrier 1 in C, 70 s.')
})

test('the table tells each carrier', () => {
  expect(figure.table.rows.map(({ cells }) => cells)).toEqual([
    ['0', '4', '30 s', '60 s', '0 s', '30 s', 'A'],
    ['1', '1', '0 s', '70 s', '0 s', '70 s', 'C'],
  ])
})

test('a carrier on its way when the stretch begins or ends is cut there', () => {
  const corners = cornersOf([stay(0, 0, 0, 0, 0, 10), stay(0, 1, 10, 20, 0, 40), stay(0, 2, 40, 60, 0, 80)], 15, 50)
  expect(corners.map(({ seconds, zone }) => [seconds, zone])).toEqual([
    [15, 0.5],
    [20, 1],
    [40, 1],
    [50, 1.5],
  ])
})

test('a stop or break is drawn as that, not as work', () => {
  const pauses = [
    { name: 'break', from: 40, to: 50, zones: null, work: [0, 1, 2], moves: [] },
    { name: 'wear', from: 45, to: 55, zones: [0], work: [0], moves: [] },
    { name: 'belt', from: 70, to: 80, zones: [0], work: [], moves: [0] },
  ]
  const held = timeline(STAYS, { zones, fromSeconds: 30, toSeconds: 150, pauses, places: ['Fit', '', ''], clock: (at) => `08:${at}` })
  const rules = (ink: string) => marksOf(held, 'rule').flatMap((rule) => (rule.ink === ink ? [rule.x] : []))
  expect(rules('spanWork')).toEqual([
    [30, 40],
    [55, 60],
  ])
  expect(rules('spanHeld')).toEqual([
    [40, 50],
    [50, 55],
    [70, 80],
  ])
  expect(held.table.rows[0]!.cells.slice(2, 5)).toEqual(['15 s', '50 s', '25 s'])
  expect(marksOf(held, 'area').map(({ tip }) => tip)).toEqual(['break: 10 s', 'wear: 10 s', 'belt: 10 s'])
  expect(held.drawing.up.ticks![0]!.text).toBe('A Fit')
  expect(held.drawing.across).toMatchObject({ title: 'Clock time' })
})

test('nobody waits; no stretch', () => {
  expect(timeline([], { zones, fromSeconds: 0, toSeconds: 60 }).finding).toBe('From 0 to 1 min no carrier waits to go on.')
  expect(timeline([], { zones, fromSeconds: 0, toSeconds: 60, stretch: '08:00 to 08:01' }).finding).toBe(
    'From 08:00 to 08:01 no carrier waits to go on.',
  )
  expect(() => timeline([], { zones, fromSeconds: 60, toSeconds: 60 })).toThrow('a stretch from 60 s to 60 s is none')
})
