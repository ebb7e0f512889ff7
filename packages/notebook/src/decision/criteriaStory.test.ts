import { beforeAll, expect, test } from 'vitest'
import { decisionExample, decisionRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { criteriaOf, criteriaStory } from './criteriaStory.ts'
import type { DecisionRuns } from './decisionRuns.ts'

let runs: DecisionRuns
beforeAll(async () => {
  runs = await decisionRuns(4)
})

test('computed scores lie between their anchors, the others are the team’s', () => {
  const { input, figures } = criteriaOf(runs)
  const of = (name: string) => input.criteria.findIndex((each) => each.name === name)
  const units = runs.result.comparison.lines[2]!.units.reduce((sum, one) => sum + one, 0) / 4
  expect(figures[of('output')]![2]).toBe(units)
  expect(input.criteria[of('output')]!.scores[2]).toBeCloseTo(1 + (4 * (units - 290)) / 60, 9)
  expect(input.criteria[of('floor')]!.scores[0]).toBeCloseTo(1 + (4 * (190 - 260)) / (180 - 260), 9)
  expect(figures[of('new variants')]).toBeNull()
  expect(input.criteria[of('new variants')]!.scores).toEqual([5, 2, 4, 5])
})

test('the answer names who comes first, who is out and why; terminal and page tell the same', () => {
  const { answer, cells } = criteriaStory(runs)
  const { matrix, input } = criteriaOf(runs)
  expect(answer.figures!.map(({ label }) => label)).toEqual(matrix.winners.length === 1 ? ['Comes first', 'Then', 'Stays first'] : [])
  for (const winner of matrix.winners) expect(answer.sentences[0]).toContain(`“${input.alternatives[winner]}”`)
  expect(answer.sentences.join(' ')).toContain('“guided vehicles” is out')
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
})

test('a tie is said to be one', () => {
  const even = {
    ...decisionExample().criteria!,
    mustHaves: [],
    criteria: [
      {
        name: 'x',
        weight: 100,
        from: null,
        one: 'bad',
        five: 'good',
        scores: new Map(runs.decision.alternatives.map(({ name }) => [name, 3])),
      },
    ],
  }
  const [first] = criteriaStory({ ...runs, decision: { ...runs.decision, criteria: even } }).answer.sentences
  expect(first).toBe(
    '“push line”, “powered rollers”, “zoned loop” and “guided vehicles” tie at 3.00 of 5: nobody scores finer than that, and the matrix does not decide between them.',
  )
})

test('without criteria, and without a figure, it is refused by name', () => {
  expect(() => criteriaOf({ ...runs, decision: { ...runs.decision, criteria: null } })).toThrow(
    'there are no criteria in base-line.decision.yaml',
  )
  const floorless = { ...runs.decision, alternatives: runs.decision.alternatives.map((one) => ({ ...one, floor: null })) }
  expect(() => criteriaOf({ ...runs, decision: floorless })).toThrow('"floor" is scored from floor, and that of "push line" is not known')
})
