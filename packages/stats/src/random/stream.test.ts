import { expect, test } from 'vitest'
import { stream } from './stream.ts'
import { StreamTable } from './streamTable.ts'

test('a stream is its name: the same as in any table', () => {
  const next = stream('42', 3, 'down/motor 3')
  const table = new StreamTable('42', 3, ['mix', 'down/motor 3'])
  for (let i = 0; i < 100; i++) {
    table.next(1)
    expect(next()).toBe(table.u[0])
  }
})

test('two of one name do not share their place', () => {
  const one = stream('42', 0, 'a')
  const first = one()
  one()
  expect(stream('42', 0, 'a')()).toBe(first)
})

test('later parts of the name may hold anything, the seed may not', () => {
  expect(stream('42', 0, 'a/b c/ü')()).toBeGreaterThan(0)
  expect(() => stream('', 0, 'a')).toThrow(expect.objectContaining({ code: 'E_SEED' }))
})
