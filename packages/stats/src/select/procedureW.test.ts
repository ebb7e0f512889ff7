import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { type CountTable, finalReplications, pilotReference, procedureW } from './procedureW.ts'

const next = stream('7', 0, 'procedure W')
const normal = (): number => normalQuantile(next())

/** means by count, with noise of the shift common to all and a little of each count's own */
function table(seed: string, means: readonly number[], replications: number, own = 0.5): CountTable {
  const outputs: number[][] = means.map(() => [])
  for (let r = 0; r < replications; r++) {
    const common = 4 * normal()
    means.forEach((mean, i) => void outputs[i]!.push(mean + common + own * normal()))
  }
  return { seed, counts: means.map((_, i) => i + 4), outputs }
}

const CURVE = [380, 396, 399.5, 400, 400]

test('the smallest count within a hundredth of the best one', () => {
  const reference = pilotReference(table('42-pilot', CURVE, 20))
  expect([7, 8]).toContain(reference.reference)
  const got = procedureW(table('42', [380, 390, 399.5, 400, 399], 60), 7, '42-pilot')
  expect(got).toMatchObject({ answer: 6, status: 'ok', replications: 60 })
  expect(got.tested.map((row) => [row.carriers, row.confirmed])).toEqual([
    [7, true],
    [6, true],
    [5, false],
  ])
})

test('a count exactly at the border is claimed in at most 5 of 100 studies', () => {
  // 2,000 studies; 5 carriers make exactly 0.99 of the best: at most 0.05 + 4 standard errors of 0.0049
  let claimed = 0
  for (let s = 0; s < 2000; s++) {
    const { answer } = procedureW(table('42', [380, 396, 400], 20), 6, '42-pilot')
    if (answer !== null && answer <= 5) claimed++
  }
  expect(claimed / 2000).toBeLessThan(0.05 + 4 * 0.0049)
  // and one well inside it nearly always
  let seen = 0
  for (let s = 0; s < 200; s++) if (procedureW(table('42', [380, 399, 400], 20), 6, '42-pilot').answer === 5) seen++
  expect(seen).toBeGreaterThan(190)
})

test('a count with gridlock is never confirmed', () => {
  const final = { ...table('42', [380, 390, 399.5, 400, 399], 60), gridlocks: [0, 0, 1, 0, 0] }
  expect(procedureW(final, 7, '42-pilot')).toMatchObject({ answer: 7, status: 'ok' })
})

test('a reference that does not hold gives no answer; the smallest count run, a wish for smaller ones', () => {
  expect(procedureW(table('42', [380, 390, 400], 20), 5, 'p')).toMatchObject({ answer: null, status: 'reference not confirmed' })
  expect(procedureW(table('42', [399, 400, 400], 20), 6, 'p')).toMatchObject({ answer: 4, status: 'smallest count confirmed' })
})

test('pilot: ties go to the smaller count, the upper end is told', () => {
  const equal: CountTable = {
    seed: 'p',
    counts: [5, 6, 7],
    outputs: [
      [1, 2],
      [2, 3],
      [2, 3],
    ],
  }
  expect(pilotReference(equal)).toEqual({ reference: 6, atUpperEnd: false })
  expect(
    pilotReference({
      ...equal,
      outputs: [
        [1, 2],
        [2, 3],
        [3, 3],
      ],
    }),
  ).toEqual({ reference: 7, atUpperEnd: true })
})

test('final replications: ten where all is alike, more where it scatters', () => {
  expect(
    finalReplications({
      seed: 'p',
      counts: [5, 6],
      outputs: [
        [100, 100, 100],
        [100, 100, 100],
      ],
    }),
  ).toBe(10)
  const scattered = finalReplications(table('p', CURVE, 20, 6))
  expect(scattered).toBeGreaterThan(50)
  expect(finalReplications(table('p', CURVE, 20, 3))).toBeLessThan(scattered)
  expect(() =>
    finalReplications({
      seed: 'p',
      counts: [5, 6],
      outputs: [
        [1, -1, 1, -1],
        [-1, 1, -1, 1],
      ],
    }),
  ).toThrow('More than 100,000 replications')
})

test('refused', () => {
  const final = table('42', CURVE, 10)
  expect(() => procedureW(final, 7, '42')).toThrow('come from the same seed 42')
  expect(() => procedureW(final, 12, 'p')).toThrow('The reference of 12 carriers is not among the counts run')
  expect(() => procedureW(final, 7, 'p', 0)).toThrow('The share within is 0')
  expect(() => procedureW(final, 7, 'p', 0.01, 1)).toThrow('The chance of error is 1')
  expect(() => pilotReference({ seed: 'p', counts: [5], outputs: [[1, 2]] })).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() =>
    pilotReference({
      seed: 'p',
      counts: [6, 5],
      outputs: [
        [1, 2],
        [1, 2],
      ],
    }),
  ).toThrow('Carriers in row 2 is 5')
  expect(() =>
    pilotReference({
      seed: 'p',
      counts: [5, 6],
      outputs: [
        [1, 2],
        [1, 2, 3],
      ],
    }),
  ).toThrow('5 carriers has 2 values and 6 carriers has 3')
  expect(() => pilotReference({ seed: 'p', counts: [5, 6], outputs: [[1, 2]] })).toThrow(
    expect.objectContaining({ code: 'E_UNEQUAL_LENGTH' }),
  )
})
