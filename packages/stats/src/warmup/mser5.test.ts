import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { mser5, warmupSentence } from './mser5.ts'

const next = stream('7', 0, 'warm-up')

test('a start that dies away is cut, and the rest is near the truth', () => {
  const values = Array.from({ length: 300 }, (_, i) => 40 - 30 * Math.exp(-i / 20) + normalQuantile(next()))
  const cut = mser5(values)
  expect(cut.status).toBe('ok')
  expect(cut.delete).toBeGreaterThanOrEqual(30)
  expect(cut.delete).toBeLessThan(150)
  expect(cut.delete! % 5).toBe(0)
  // at most 260 values of spread 1: 4.9 standard errors
  expect(Math.abs(cut.meanAfter! - 40)).toBeLessThan(0.35)
})

test('the incomplete last batch is not looked at', () => {
  const values = Array.from({ length: 60 }, (_, i) => (i % 5) + (i < 10 ? 5 : 0))
  expect(mser5([...values, 1000, 1000])).toEqual(mser5(values))
})

test('at least five batches stay: a few equal counts at the end do not look perfect', () => {
  const values = [...Array.from({ length: 80 }, (_, i) => (i * 7) % 11), ...Array(20).fill(5)]
  expect(mser5(values).curve).toHaveLength(16)
})

test('what is refused, and how it is said', () => {
  const short = mser5(Array(49).fill(1))
  expect(short).toMatchObject({ status: 'too short', delete: null, batches: 9 })
  expect(warmupSentence(short)).toBe('Cannot look for a warm-up in 9 batches of 5 intervals: give at least 50 intervals.')
  const ramp = mser5(Array.from({ length: 300 }, (_, i) => i))
  expect(ramp).toMatchObject({ status: 'not converged', delete: null, meanAfter: null })
  expect(warmupSentence(ramp)).toBe('Warm-up not found: the steadiest part begins after 275 of 300 intervals; run at least twice as long.')
  for (const end of ['gridlock', 'out of products'] as const) {
    const dead = mser5([...Array(60).fill(7), ...Array(240).fill(0)], end)
    expect(dead).toMatchObject({ status: 'ended early', delete: null, curve: [] })
    expect(warmupSentence(dead, end)).toContain(end === 'gridlock' ? 'look at why it stood still' : 'The list of products ran out')
  }
  expect(() => mser5([])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
})
