import { arrows, elasticity, exchangeElasticity, limitingParts } from '@loopwright/stats/procedures'
import { expect, test } from 'vitest'
import { vectorLoopRate } from './maxPlusLoop.ts'
import { expectRelative, readCases } from './vectors.ts'

test.each(readCases('bottleneck', 'arrows'))('$id arrows', ({ input, expect: want }) => {
  const got = arrows(input.blocked, input.starved, input.closed)
  expect(got.arrows.map(([from, to]) => [from + 1, to + 1])).toEqual(want.arrows)
  expect(got.candidates.map((one) => one.station + 1)).toEqual(want.candidates.map((one: [number, number]) => one[0]))
  want.candidates.forEach((one: [number, number], i: number) => {
    expectRelative(got.candidates[i]!.severity, one[1], 1e-9)
  })
})

test.each(readCases('bottleneck', 'elasticity of the loop'))('$id elasticity of each station', ({ input, expect: want }) => {
  const rates = (scaled: { station: number; by: number } | null): number[] =>
    Array.from({ length: input.replications }, (_, r) => vectorLoopRate(r + 1, input.carriers, scaled))
  const base = rates(null)
  const found = want.meanAndHalfWidth.map(([mean, halfWidth]: [number, number], station: number) => {
    const outputs = { base, faster: rates({ station, by: 1 - input.step }), slower: rates({ station, by: 1 + input.step }) }
    const got = elasticity(outputs, input.step)
    expectRelative(got.mean, mean, 1e-9)
    expectRelative(got.halfWidth, halfWidth, 1e-9)
    return got
  })
  expect(limitingParts(found)).toEqual([1])
})

test.each(readCases('bottleneck', 'elasticity, slowest exchange, constant times'))('$id closed form', ({ input, expect: want }) => {
  const { move, stay, clear, step } = input
  expectRelative(exchangeElasticity(stay, move + stay + clear, step), want.value, 1e-9)
  // and by the definition, from the rates of the one active limit
  const rate = (by: number): number => 1 / (move + by * stay + clear)
  const of = (by: number): number[] => [rate(by), rate(by)]
  expectRelative(elasticity({ base: of(1), faster: of(1 - step), slower: of(1 + step) }, step).mean, want.value, 1e-9)
})
