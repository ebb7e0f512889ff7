import { readScenario } from '@loopwright/scenario'
import { compareLines } from '@loopwright/study/compare'
import { withCarriers } from '@loopwright/study/change'
import { expect, test } from 'vitest'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { period } from '../sweep/period.ts'
import { liveFigures } from './liveFigures.ts'

const { scenario } = readScenario(SMALL_LINE)
const words = period(scenario!)
const { line, plan } = scenario!
const of = (name: string, count: number) => ({ name, line: withCarriers(line, count), plan: plan?.unitsPerWindow ?? null })

test('the last line beside the first: its mean, how much more, and what differs', async () => {
  const result = await compareLines([of('file', 4), of('what if', 1)], { replications: 5 }, { seed: '1', workers: 0 })
  const [units, nine, met] = liveFigures(result, words)
  expect(units).toMatchObject({ label: 'Units a shift', more: expect.stringMatching(/^−\d/) })
  expect(Number(units!.was)).toBeCloseTo(result.lines[0]!.mean!.mean, -1)
  expect([nine!.label, nine!.more]).toEqual(['Nine of ten shifts', ''])
  expect(met!.label).toMatch(/^Plan of /)
})

test('what is the same is not told twice', async () => {
  const result = await compareLines([of('file', 4), of('what if', 4)], { replications: 5 }, { seed: '1', workers: 0 })
  expect(liveFigures(result, words).map(({ was, more }) => [was, more])).toEqual([
    ['', ''],
    ['', ''],
    ['', ''],
  ])
})
