import { expect, test } from 'vitest'
import { welchCurve } from './welchCurve.ts'

const flat = Array.from({ length: 5 }, () => Array(20).fill(3))

test('a flat line stays flat and loses the window at its end', () => {
  expect(welchCurve(flat, 5)).toEqual(Array(15).fill(3))
  expect(welchCurve(flat, 0)).toHaveLength(20)
})

test('refused', () => {
  expect(() => welchCurve(flat.slice(1), 2)).toThrow('Cannot give a smoothed curve from 4 replications: give at least 5.')
  expect(() => welchCurve([...flat, [1, 2]], 2)).toThrow('Replication 5 has 2 intervals and the first has 20')
  expect(() => welchCurve(flat, 6)).toThrow('choose at most 5')
  expect(() => welchCurve(flat, 1.5)).toThrow('The window is 1.5')
})
