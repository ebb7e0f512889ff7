import { expect, test } from 'vitest'
import { whyNotPairable } from './pairable.ts'

test('the first thing that differs is named', () => {
  const key = { seed: '42', replications: 9, warmupSeconds: 0, endSeconds: 60 }
  expect(whyNotPairable(key, { ...key })).toBeNull()
  expect(whyNotPairable(key, { ...key, seed: '43', endSeconds: 70 })).toBe(
    'These two results come from different seeds (42 and 43), so they cannot be paired.',
  )
  expect(whyNotPairable(key, { ...key, replications: 8 })).toContain('numbers of replications (9 and 8)')
  expect(whyNotPairable(key, { ...key, warmupSeconds: 5 })).toContain('warm-up cuts (0 and 5)')
  expect(whyNotPairable(key, { ...key, endSeconds: 61 })).toContain('windows (60 and 61)')
})
