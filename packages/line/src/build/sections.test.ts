/** Timelines of sections, worked out by hand from MODEL.md §1, §7. */
import { expect, test } from 'vitest'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from './build.ts'
import type { LineSpec } from '../spec.ts'

const SECTIONS = [
  { name: 'a', zones: [0, 1] },
  { name: 'b', zones: [2, 3] },
]
const LOOP: Wish = { zones: 4, start: [0, 2], move: 4, clear: 3, until: 30 }
const cut = (wish: Wish, sections = SECTIONS): LineSpec => ({ ...smallLoop(wish), sections })

test('a breakdown of a section holds its zones and no other', () => {
  // b is down 2–7: c1 on its way 2 → 3 stands still: rest at 9; c0 on its way 0 → 1 comes to rest at 4, then Z2 is held until 7
  const wish: Wish = { ...LOOP, stops: [{ name: 'belt', on: { kind: 'section', index: 1 }, clock: 'calendar', after: 2, repair: 5 }] }
  const lines = timeline(cut(wish), 'rest', 'leave').slice(0, 6)
  // Z2 is left by c1 at 0, clear after 3 s of which 1 s was left at 7: 8
  expect(lines).toEqual(['0 leave Z0 c0', '0 leave Z2 c1', '4 rest Z1 c0', '8 leave Z1 c0', '9 rest Z3 c1', '9 leave Z3 c1'])
  const { result } = tell(cut(wish))
  expect(result.zones.map(({ seconds }) => seconds.stopped)).toEqual([0, 0, 5, 5])
  expect(result.zones[2]!.stoppedBy).toEqual([{ cause: 'belt', seconds: 5 }])
})

test('the operating clock of a section runs while any of its zones operates', () => {
  // a: 0 → 1 from 0 to 4 (Z0, Z1); one carrier: 1 → 2 from 4: Z1 until clear at 7; 3 → 0 from 12: on. Time to failure 9: 7 + 2: at 14
  const wish: Wish = { ...LOOP, start: [0], stops: [{ name: 'belt', on: { kind: 'section', index: 0 }, after: 9, repair: 5 }] }
  expect(timeline(cut(wish), 'stop', 'repaired')).toEqual(['14 stop belt', '19 repaired belt'])
})

test('zones in no section are never stopped by one, and two sections share none', () => {
  const wish: Wish = { ...LOOP, stops: [{ name: 'belt', on: { kind: 'section', index: 0 }, clock: 'calendar', after: 2, repair: 5 }] }
  const { result } = tell(cut(wish, [{ name: 'a', zones: [0] }]))
  expect(result.zones.map(({ seconds }) => seconds.stopped)).toEqual([5, 0, 0, 0])
  expect(() => buildLine(cut(LOOP, [SECTIONS[0]!, { name: 'b', zones: [1, 2] }]))).toThrow('zone Z1 is in section b and in another one')
})

test('sections without a stop change nothing', () => {
  const wish: Wish = {
    ...LOOP,
    stations: [
      { at: 1, load: 2 },
      { at: 3, unload: 1 },
    ],
    until: 500,
  }
  expect(tell(cut(wish)).result).toEqual(tell(smallLoop(wish)).result)
})
