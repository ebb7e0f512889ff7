import { quantile, stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { Draws, World } from './series.ts'

test('a world gives the numbers of its streams, in any order of asking', () => {
  const next = stream('5', 3, 'down/jam')
  const first = [next(), next(), next()]
  const world = new World('5', 3)
  expect(world.uniform('down/jam', 2)).toBe(first[2])
  expect(world.uniform('repair/jam', 0)).toBe(stream('5', 3, 'repair/jam')())
  expect(world.uniform('down/jam', 0)).toBe(first[0])
})

test('a draw is the inverse at its uniform; a constant and a list are no matter of chance', () => {
  const world = new World('5', 0)
  const d = { kind: 'lognormal', mean: 30, cv: 0.2 } as const
  expect(new Draws(d).at(world, 'task/fit', 4)).toBe(quantile(d, world.uniform('task/fit', 4)))
  const list = new Draws({ kind: 'replay', values: [7, 8, 9] })
  expect([list.random, list.at(world, 'task/fit', 4)]).toEqual([false, 8])
  expect(new Draws({ kind: 'constant', value: 3 }).random).toBe(false)
  expect(new Draws({ kind: 'limited', of: { kind: 'constant', value: 3 }, shift: 1, min: null, max: null }).at(world, 'x', 0)).toBe(4)
})
