import { forecastReplications, type Precision, stopAt } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { r1, ToyGenerator } from './toyGenerator.ts'
import { type Case, expectRelative, readCases } from './vectors.ts'

const precisionOf = ({ input }: Case): Precision => ({ relative: input.relative, absolute: input.absolute })

test.each(readCases('stopping', 'sequential'))('$id $input.recipe', (one) => {
  const { input, expect: want } = one
  const toy = new ToyGenerator(input.seed)
  const values = Array.from({ length: input.nMax }, () => r1(input.mu + input.sigma * toy.z()))
  const got = stopAt(values, precisionOf(one), input.n0, input.nMax)
  expect([got.n, got.status]).toEqual([want.n, want.status])
  expectRelative(got.mean, want.mean, 1e-9)
  expectRelative(got.halfWidth, want.halfWidth, 1e-9)
  // running ahead, or coming back with too few, changes nothing
  if (want.status === 'ok') {
    expect(stopAt(values.slice(0, want.n), precisionOf(one), input.n0, input.nMax)).toEqual(got)
    expect(stopAt(values.slice(0, want.n - 1), precisionOf(one), input.n0, input.nMax).status).toBe('more needed')
  }
})

test.each(readCases('stopping', 'forecast of n'))('$id forecast', (one) => {
  expect(forecastReplications(one.input.data, precisionOf(one))).toBe(one.expect.n)
})
