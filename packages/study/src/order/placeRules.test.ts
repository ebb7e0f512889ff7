import { expect, test } from 'vitest'
import { placeRules } from './placeRules.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'

const { line } = testLine()

test('names become places in the lists of the line, and places stay', () => {
  const rules = { move: [2, 1], zones: [1, 9], before: [[1, 2]], mine: [0, 4, 6] }
  expect(placeRules(line, { move: ['S3', 'S2'], zones: ['Z02', 'Z10'], before: [['S2', 'S3']], mine: { S2: 'Z05' } })).toEqual(rules)
  expect(placeRules(line, { ...rules, before: [[1, 2]] })).toEqual(rules)
  expect(placeRules(line, { move: ['S2'] })).toEqual({ move: [1] })
})

test('what is not known is told with what there is', () => {
  expect(() => placeRules(line, { move: ['S9'] })).toThrow('no station called "S9"; there are S1, S2, S3')
  expect(() => placeRules(line, { move: [3] })).toThrow('no station called "3"; there are S1, S2, S3')
  expect(() => placeRules(line, { move: ['S2'], zones: ['Z99'] })).toThrow('no zone called "Z99"')
})
