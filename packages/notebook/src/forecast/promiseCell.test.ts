import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { period } from '../sweep/period.ts'
import { promiseCell } from './promiseCell.ts'

const scenario = testLine()
const sweep = await sweepCarriers(scenario.line, { counts: [4], replications: 40 }, { seed: '1', workers: 0 })
const count = sweep.counts[0]!
const words = period(scenario)
const said = (shiftsPerWeek: number, of = count): string | undefined => promiseCell(of, words, shiftsPerWeek)?.markdown

test('what nine of ten shifts make, and weeks as far as the shifts suffice for them', () => {
  expect(said(1)).toBe(
    `With 4 carriers nine of ten shifts make at least ${count.p10!.point.toFixed(0)} units, half of them ${count.p50!.point.toFixed(0)} or more.`,
  )
  expect(said(2)).toMatch(/ A week of 2 shifts makes \d+ units on average, and nine of ten such weeks at least \d+\.$/)
  expect(said(3)).toMatch(/ A week of 3 shifts makes \d+ units on average\.$/)
})

test('too few shifts promise nothing, nor does a standstill; shifts that are all the same are told as that', () => {
  expect(said(1, { ...count, units: count.units.slice(0, 10) })).toBeUndefined()
  expect(said(1, { ...count, gridlocks: 1 })).toBeUndefined()
  const fixed = { ...count, units: [300, 300], mean: { ...count.mean!, mean: 300, halfWidth: 0 } }
  expect(said(5, fixed)).toBe('With 4 carriers every shift makes 300 units. A week of 5 shifts makes 1\u202f500 units.')
})
