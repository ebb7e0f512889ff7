import { procedureW } from '@loopwright/stats/procedures'
import { expect, test } from 'vitest'
import { maxPlusLoop, vectorLoopRate } from './maxPlusLoop.ts'
import { expectOfSize, expectRelative, readCases } from './vectors.ts'

test.each(readCases('carriers', 'max-plus tables'))('$id the loop that feeds these checks, by hand', ({ input, expect: want }) => {
  expect(maxPlusLoop(input.S, input.carriers, input.places, input.travel)).toEqual(want)
})

test.each(readCases('carriers', 'throughput by count'))('$id throughput by count', ({ input, expect: want }) => {
  for (let r = 1; r <= input.replications; r++) {
    input.counts.forEach((carriers: number, i: number) => {
      expectRelative(vectorLoopRate(r, carriers), want.rates[r - 1][i], 1e-9)
    })
  }
})

test.each(readCases('carriers', 'procedure W'))('$id how many carriers, within $input.x', ({ input, expect: want }) => {
  const outputs = input.counts.map((_: number, i: number) => input.rates.map((row: number[]) => row[i]))
  const got = procedureW({ seed: '42', counts: input.counts, outputs }, input.ref, '42-pilot', input.x, input.alpha)
  expect(got.tested.map((row) => row.carriers)).toEqual(want.rows.map((row: [number, number]) => row[0]))
  want.rows.forEach((row: [number, number], i: number) => {
    expectOfSize(got.tested[i]!.lowerLimit, row[1], 1e-9)
  })
  expect(got.answer).toBe(want.answer)
})
