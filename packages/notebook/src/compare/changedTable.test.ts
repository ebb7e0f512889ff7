import { expect, test } from 'vitest'
import { inHours } from './changedTable.ts'

test('long times are told as somebody would write them, others as they stand', () => {
  expect(inHours('39600 s ± 20 %')).toBe('11 h ± 20 %')
  expect(inHours('lognormal 9000 s')).toBe('lognormal 2.5 h')
  for (const kept of ['7199 s', '10000 s', '45 s ± 15 %', 'exponential 120 s', 'A, T']) expect(inHours(kept)).toBe(kept)
})
