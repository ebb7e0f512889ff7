import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { workDeviationsExample } from '../examples/decision.ts'
import { workDeviations } from './workDeviations.ts'

test('dots stand at measured over model, their bars are 1.96 standard errors', () => {
  const figure = workDeviationsExample()
  const [first] = marksOf(figure, 'dot')
  expect(first!.x).toBeCloseTo(66.2 / 61.8 - 1, 12)
  const [, bar] = marksOf(figure, 'rule')
  expect((bar!.x[1] as number) - (bar!.x[0] as number)).toBeCloseTo((2 * 1.96 * 2.6) / Math.sqrt(40) / 61.8, 12)
  expect(figure.finding).toMatch(/^S6 works otherwise than in the model: 7.% longer\.$/)
})

test('nothing shown is said to be so; nothing at all is refused', () => {
  const same = { station: 'S1', seconds: 60, modelSeconds: 60, n: 5, sd: 0, standardErrors: null, differs: false, cyclesFor5: 2 }
  expect(workDeviations([same]).finding).toBe('No station that was measured is shown to work otherwise than in the model.')
  expect(() => workDeviations([])).toThrow(RangeError)
})
