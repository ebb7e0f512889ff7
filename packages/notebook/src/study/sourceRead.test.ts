import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { sourceRead } from './sourceRead.ts'

const of = { scenarioFile: 'a.yaml', scenarioText: SMALL_LINE }

test('what was read is not read again', () => {
  const { scenario, notes, ...said } = readScenario(SMALL_LINE)
  const read = { scenario: scenario!, notes: notes!, ...said }
  expect(sourceRead({ ...of, scenarioText: 'anything', read })).toBe(read)
})

test('else the text is, with what lies beside it', () => {
  const text = SMALL_LINE.replace('place: 20 s', 'place: { kind: empirical, file: times.csv, column: seconds, unit: s }')
  expect(sourceRead(of)?.values('carriers.count')).toBe(4)
  expect(sourceRead({ ...of, scenarioText: text, readBeside: () => 'seconds\n5\n' })?.beside).toEqual({ 'times.csv': 'seconds\n5\n' })
})

test('none without a text, or with a wrong one', () => {
  expect(sourceRead({ scenarioFile: 'a.yaml' })).toBeNull()
  expect(sourceRead({ ...of, scenarioText: 'format: 1' })).toBeNull()
})
