import { describe, expect, test } from 'vitest'
import { blockLoop, generalLine } from '../../../../tests/bench/lines.ts'
import { smallLoop, type StopWish } from '../../../../tests/helpers/smallLoop.ts'
import { createSimulator, simulate } from '../simulate.ts'
import { inOne } from './pieces.ts'

const WORLD = { seed: 'pieces', replication: 0 }

test.each([
  ['by events', blockLoop(1, 400), { engine: 'events' }],
  ['by the recursion', blockLoop(1, 400), { engine: 'recursion' }],
  ['with every check', blockLoop(1, 10), { verify: true }],
  ['a general line', generalLine(40), {}],
] as const)('%s: a run in pieces is the run in one', (_, line, options) => {
  const pieces = createSimulator(line, options).pieces(WORLD)
  let count = 1
  let piece = pieces.next()
  for (; piece.done !== true; piece = pieces.next()) count++
  expect(count).toBeGreaterThan(1)
  expect(piece.value).toEqual(simulate(line, { ...WORLD, ...options }))
})

test('all pieces, and what came of them', () => {
  function* three(): Generator<undefined, string, undefined> {
    yield
    yield
    return 'done'
  }
  expect(inOne(three())).toBe('done')
})

test('a run that is left in the middle leaves nothing behind', () => {
  const simulator = createSimulator(blockLoop(1, 400), { engine: 'events' })
  simulator.pieces({ seed: 'other', replication: 9 }).next()
  expect(simulator.run(WORLD)).toEqual(simulate(blockLoop(1, 400), { ...WORLD, engine: 'events' }))
})

describe('what takes no time is said instead of done for ever', () => {
  const loop = (stop: StopWish, load = 5) =>
    smallLoop({
      zones: 6,
      start: [0, 3],
      move: 4,
      clear: 3,
      stations: [
        { at: 1, load },
        { at: 4, unload: true },
      ],
      stops: [stop],
      until: 1000,
    })
  const constant = (value: number) => ({ kind: 'constant', value }) as const
  const never = constant(1e-9)
  const station = { kind: 'station', index: 0 } as const
  test.each(['events', 'recursion'] as const)('a stop that comes at once and is over at once, %s', { tags: 'long' }, (engine) => {
    const line = loop({ name: 'jam', on: station, after: never, repair: never })
    expect(() => simulate(line, { ...WORLD, engine })).toThrow(engine === 'events' ? 'the clock does not go on' : '10,000,000 times')
  })

  test('by the clock, which holds moves', () => {
    const line = loop({ name: 'jam', on: { kind: 'zone', index: 2 }, clock: 'calendar', after: never, repair: never })
    expect(() => simulate(line, WORLD)).toThrow('the clock does not go on')
  })

  test('a stop that takes time ends with the window, however much work is left', () => {
    for (const engine of ['events', 'recursion'] as const) {
      // work of a hundred years, stopped each minute
      const line = loop({ name: 'jam', on: station, after: constant(60), repair: constant(30) }, 4e9)
      const { breakdowns, loads } = simulate(line, { ...WORLD, engine })
      expect([loads, breakdowns[0]!.count]).toEqual([1, 11])
    }
  })
})
