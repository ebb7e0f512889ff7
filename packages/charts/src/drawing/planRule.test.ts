import { expect, test } from 'vitest'
import { planRule } from './planRule.ts'

test('a line and its words at the plan, nothing without one', () => {
  expect(planRule(1330)).toMatchObject([
    { mark: 'rule', y: [1330, 1330], ink: 'plan' },
    { mark: 'words', y: 1330, text: 'plan 1\u202f330', ink: 'planWords' },
  ])
  expect(planRule(null)).toEqual([])
})
