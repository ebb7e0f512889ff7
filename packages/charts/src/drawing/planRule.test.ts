import { expect, test } from 'vitest'
import { planRule } from './planRule.ts'

test('a line and its words at the plan, nothing without one', () => {
  expect(planRule(1330).map((mark) => [mark.mark, mark.ink, 'text' in mark ? mark.text : mark.y])).toEqual([
    ['rule', 'plan', [1330, 1330]],
    ['words', 'planWords', 'plan 1\u202f330'],
  ])
  expect(planRule(null)).toEqual([])
})
