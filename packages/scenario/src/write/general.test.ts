import { PLAIN_LINE, STORE } from '@loopwright/line'
import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { general, isWhole, mergeOf, place, supplyOf } from './general.ts'
import { flow, NO_REMARKS } from './nodes.ts'

const line = smallGraph({
  zones: 2,
  start: ['store'],
  paths: chain('store', 0, 1, 'store'),
  stations: [
    { at: 0, load: 1 },
    { at: 1, unload: 1 },
  ],
  move: 2,
  clear: 1,
})
const style = { remarks: NO_REMARKS, wide: false }
const said = (parts: ReturnType<typeof general>): object => flow(parts).toJSON() as object

test('of a line without any of it only what has a default is written', () => {
  expect(said(general(line, style))).toEqual({ supply: 'always', repairCrews: 'unlimited' })
})

test('sections, operators and walks by names', () => {
  const staffed = {
    ...line,
    sections: [{ name: 'front', zones: [0] }],
    operators: [{ name: 'anna', stations: [1, 0], start: 1 }],
    walks: [{ between: [0, 1] as const, seconds: 4 }],
    repairCrews: 2,
  }
  expect(said(general(staffed, style))).toEqual({
    sections: { front: ['Z0'] },
    operators: { anna: { stations: ['S1', 'S0'], start: 'S1' } },
    walks: [{ between: ['S0', 'S1'], lasts: '4 s' }],
    supply: 'always',
    repairCrews: 2,
  })
})

test('a place, a whole line, a supply', () => {
  expect([place(line, STORE).value, place(line, 1).value]).toEqual(['store', 'Z1'])
  expect([isWhole(line), isWhole({ ...line, sections: [] })]).toEqual([true, false])
  expect(supplyOf(PLAIN_LINE.supply, 'supply').toJSON()).toBe('always')
  expect(supplyOf({ name: 'dock', arrivals: { kind: 'list', instants: [1, 2] }, queueLimit: 3 }, 'supply').toJSON()).toEqual({
    name: 'dock',
    times: ['1 s', '2 s'],
    queue: 3,
  })
})

test('right of way', () => {
  expect(mergeOf(line, { kind: 'alternate' }).toJSON()).toBe('alternate')
  expect(mergeOf(line, { kind: 'priority', from: [1, STORE] }).toJSON()).toEqual({ priority: ['Z1', 'store'] })
})
