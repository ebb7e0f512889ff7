import { readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { nameList } from './arguments.ts'
import { orderRules } from './orderRules.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'

const { line } = readScenario(SMALL_LINE).scenario!

test('names become indices; without names stations with work only may move', () => {
  expect(orderRules(line, {})).toEqual({ move: [1], before: [] })
  expect(orderRules(line, { move: ['B'], before: ['A<B<C'], zones: ['Z03..Z05', 'Z07'], try: 'B@Z06' })).toEqual({
    move: [1],
    before: [
      [0, 1],
      [1, 2],
    ],
    zones: [2, 3, 4, 6],
    mine: [0, 5, 7],
  })
})

test('a range runs in travel direction, over the end of the list', () => {
  expect(orderRules(line, { zones: ['Z09..Z02'] }).zones).toEqual([8, 9, 0, 1])
})

test('what is not known is said with what there is', () => {
  expect(() => orderRules(line, { move: ['D'] })).toThrow('there is no station "D"; there are A, B, C')
  expect(() => orderRules(line, { move: ['B'], stay: ['B'] })).toThrow('B is named under --move and under --stay')
  expect(() => orderRules(line, { before: ['A'] })).toThrow('such as "S3<S4"')
  expect(() => orderRules(line, { try: 'B' })).toThrow('write station@zone')
  expect(() => nameList('a,,b')).toThrow('separated by commas')
})

describe('rules that no order can keep are told before anything runs', () => {
  const four = SMALL_LINE.replace('  C: {', '  D: { name: Check, zone: Z06, work: { look: 5 s } }\n  C: {')
  const { line: longer } = readScenario(four).scenario!
  test('against the flow', () => {
    expect(() => orderRules(line, { before: ['B<A'] })).toThrow('"B<A" runs against the flow: products come onto the loop at A')
    expect(() => orderRules(line, { before: ['A<C<B'] })).toThrow('"C<B" runs against the flow: products leave the loop at C')
  })
  test('in a circle', () => expect(() => orderRules(longer, { before: ['B<D', 'D<B'] })).toThrow('"B<D<B" comes back to where it began'))
  test('about stations that stay', () => {
    expect(() => orderRules(longer, { before: ['D<B'], stay: ['B', 'D'], move: ['A'] })).toThrow('B stands before D and neither may move')
    expect(orderRules(longer, { before: ['D<B'], move: ['B'] }).before).toHaveLength(1)
  })
})
