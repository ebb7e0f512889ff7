import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { SMALL_LINE } from './memoryShell.ts'
import { nameList, orderRules } from './orderRules.ts'

const { line } = readScenario(SMALL_LINE, 'small.yaml').scenario!

test('names become indices; without names stations with work only may move', () => {
  expect(orderRules(line, {})).toEqual({ move: [1], before: [] })
  expect(orderRules(line, { move: ['B'], before: ['A<B<C'], zones: ['Z03..Z05', 'Z07'], mine: 'B@Z06' })).toEqual({
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
  expect(() => orderRules(line, { move: ['B'], keep: ['B'] })).toThrow('B is named under --move and under --keep')
  expect(() => orderRules(line, { before: ['A'] })).toThrow('such as "S3<S4"')
  expect(() => orderRules(line, { mine: 'B' })).toThrow('write station@zone')
  expect(() => nameList('a,,b')).toThrow('separated by commas')
})
