import seedrandom from 'seedrandom'
import { expect, test } from 'vitest'
import { checkSeed, makePrefix, seedAlea, setPrefix, stepAlea, stepAleaBlock } from './alea.ts'
import { lettersInto } from './mash.ts'

const start = (state: Float64Array, offset: number, seed: string, replication: number, name: string): void => {
  const prefix = makePrefix()
  const letters = new Uint16Array(name.length + 2)
  setPrefix(prefix, seed, replication)
  lettersInto(letters, `:${name}:`)
  seedAlea(state, offset, prefix, letters, 1, name.length + 1)
}

test('its steps have the bits of the library that started it', () => {
  const state = new Float64Array(8)
  const out = new Float64Array(2)
  start(state, 4, '42', 0, 'mix')
  const library = seedrandom.alea('42/0/mix')
  for (let i = 0; i < 10_000; i++) {
    stepAlea(state, 4, out, 1)
    expect(out[1]).toBe(library.double())
  }
  expect([...state.subarray(0, 4)]).toEqual([0, 0, 0, 0])
  expect(out[0]).toBe(0)
})

test('a prefix may be longer or shorter than the one before', () => {
  const prefix = makePrefix()
  const letters = new Uint16Array(3)
  const state = new Float64Array(4)
  lettersInto(letters, 'mix')
  for (const [seed, replication] of [
    ['a'.repeat(200), 1],
    ['42', 12_345_678],
    ['7', 0],
  ] as const) {
    setPrefix(prefix, seed, replication)
    seedAlea(state, 0, prefix, letters, 0, 3)
    const library = seedrandom.alea(`${seed}/${replication}/mix`, { state: true }).state()
    expect([...state]).toEqual([library.c, library.s0, library.s1, library.s2])
  }
})

test('a block of steps has the bits of as many single ones, and leaves the state where they do', () => {
  const [one, block] = [new Float64Array(8), new Float64Array(8)]
  for (const state of [one, block]) start(state, 4, '42', 3, 'task/fit')
  const singly = new Float64Array(1)
  const together = new Float64Array(40)
  for (let round = 0; round < 100; round++) {
    stepAleaBlock(block, 4, together, 7, 33)
    for (let k = 0; k < 33; k++) {
      stepAlea(one, 4, singly, 0)
      expect(together[7 + k]).toBe(singly[0])
    }
  }
  expect(block).toEqual(one)
  expect([...together.subarray(0, 7)]).toEqual([0, 0, 0, 0, 0, 0, 0])
})

test('a uniform of 0 counts as 2^-54', () => {
  const out = new Float64Array(1)
  stepAlea(new Float64Array(4), 0, out, 0)
  expect(out[0]).toBe(2 ** -54)
})

test('seeds and replications that could give two streams one name are refused', () => {
  expect(() => checkSeed('', 0)).toThrow('The seed is empty')
  expect(() => checkSeed(42 as unknown as string, 0)).toThrow('The seed 42 is no text: write it in quotes')
  expect(() => checkSeed('4/2', 0)).toThrow('The seed "4/2" contains "/"')
  expect(() => checkSeed('42', -1)).toThrow('The replication -1 is not a whole number from 0')
  expect(() => checkSeed('42', 0.5)).toThrow(expect.objectContaining({ code: 'E_SEED' }))
  expect(() => checkSeed('42-pilot', 0)).not.toThrow()
})
