import { expect, test } from 'vitest'
import { Mistake } from '../load/fault.ts'
import { checkNames, shown, withKnownNames } from './knownNames.ts'

const caught = (make: () => unknown): Mistake => {
  try {
    make()
  } catch (error) {
    if (error instanceof Mistake) return error
    throw error
  }
  throw new Error('nothing was thrown')
}

test('names that nobody reads are told all at once, with the nearest that are known', () => {
  const { message, fix, word } = caught(() =>
    checkNames('sweep', { carriers: [1], replication: 3, sed: '1' }, ['carriers', 'replications', 'seed']),
  )
  expect(message).toBe('sweep knows nothing called "replication" and "sed"')
  expect(fix).toBe('Did you mean "replications" and "seed"? sweep takes carriers, replications and seed.')
  expect(word).toBe('replication')
})

test('nothing and right names pass; what has no names does not', () => {
  checkNames('sweep', undefined, ['carriers'])
  checkNames('sweep', { carriers: 1 }, ['carriers'])
  for (const wrong of [null, 3, 'carriers', [1]])
    expect(caught(() => checkNames('sweep', wrong, ['carriers'])).fix).toBe('sweep takes carriers.')
})

test('an object that says so when it is asked for what it has not', () => {
  const known = withKnownNames('a notebook', { sweep: 1, show: 2 })
  expect([known.sweep, { ...known }]).toEqual([1, { sweep: 1, show: 2 }])
  expect(caught(() => (known as unknown as { swep: number }).swep)).toMatchObject({ word: 'swep', fix: 'Did you mean "sweep"?' })
  expect(caught(() => (known as unknown as { zebra: number }).zebra).fix).toBe('It has sweep and show.')
})

test.each([
  ['a', '"a"'],
  ['a'.repeat(50), `"${'a'.repeat(39)}…"`],
  [3, '3'],
  [[1], 'a list'],
  [{}, 'an object'],
  [null, 'null'],
  [() => {}, 'a function'],
])('%j in a sentence', (value, expected) => expect(shown(value)).toBe(expected))
