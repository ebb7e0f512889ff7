import { StreamTable, stream } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { ToyGenerator } from './toyGenerator.ts'
import { readCases } from './vectors.ts'

describe('first draws of named streams, to the last bit', () => {
  test.each(readCases('streams'))('$id $input.name', ({ input, expect: want }) => {
    const next = stream(input.seed, input.replication, input.name)
    const table = new StreamTable(input.seed, input.replication, ['another', input.name])
    const draws: number[] = []
    for (let i = 0; i < 1000; i++) {
      draws.push(next())
      table.next(1)
      expect(table.u[0]).toBe(draws[i])
    }
    expect(draws.slice(0, 5)).toEqual(want.first5)
    expect(draws[999]).toBe(want.draw1000)
  })
})

describe('the generator that made the pseudo-data of these vectors', () => {
  test('state after 10000 steps', () => {
    const [one] = readCases('toy-generator', 'state after 10000 steps')
    const toy = new ToyGenerator(one!.input.seed)
    for (let i = 0; i < 10_000; i++) toy.u()
    expect(toy.state).toBe(one!.expect.state)
  })
  test('first uniforms and near-normal values', () => {
    const [one] = readCases('toy-generator', 'first u and z')
    const uniforms = new ToyGenerator(one!.input.seed)
    const normals = new ToyGenerator(one!.input.seed)
    expect(one!.expect.u.map(() => uniforms.u())).toEqual(one!.expect.u)
    expect(one!.expect.z.map(() => normals.z())).toEqual(one!.expect.z)
  })
})
