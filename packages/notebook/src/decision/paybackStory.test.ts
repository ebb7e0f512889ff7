import { beforeAll, expect, test } from 'vitest'
import { decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { type DecisionRuns, paybackOf } from './decisionRuns.ts'
import { paybackStory } from './paybackStory.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(6)
})

test('the first sentence says who meets the hurdle, then each alternative has its own, then the envelope', () => {
  const { answer, question } = paybackStory(runs)
  const { alternatives } = paybackOf(runs)
  const within = alternatives.filter(({ withinHurdle }) => withinHurdle).map(({ name }) => name)
  expect(question).toBe('Is the loop worth its money against the push line of today?')
  for (const name of within) expect(answer.sentences[0]).toContain(`“${name}”`)
  if (within.length === 0) expect(answer.sentences[0]).toContain('No alternative pays back within')
  for (const { name, worth } of alternatives)
    expect(
      answer.sentences.some((each) =>
        each.startsWith(
          `“${name}” ${worth.paybackMonths === null ? 'never pays back' : `pays back in ${Math.round(worth.paybackMonths)} months`}`,
        ),
      ),
    ).toBe(true)
  expect(answer.sentences.at(-1)).toMatch(/^Seconds × units would have said .* months/)
})

test('terminal and page tell the same, and the charts of the others are on the page', () => {
  const { cells, charts } = paybackStory(runs)
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
  expect(charts.filter(({ pageOnly }) => pageOnly !== true)).toHaveLength(1)
  expect(new Set(cells.map(({ id }) => id)).size).toBe(cells.length)
})

test('overtime that may not be worked is asked for, and not where it is known', () => {
  expect(paybackStory(runs).warnings.map(({ id }) => id)).toEqual(['warning-overtime', 'warning-limits'])
  const known = { ...runs, decision: { ...runs.decision, money: { ...runs.decision.money!, overtimeWorked: 300 } } }
  expect(paybackStory(known).warnings.map(({ id }) => id)).toEqual(['warning-limits'])
  const capped = { ...runs, decision: { ...runs.decision, money: { ...runs.decision.money!, overtimeWorked: 10 } } }
  expect(paybackStory(capped).warnings.map(({ id }) => id)).toEqual(['warning-worked', 'warning-limits'])
})
