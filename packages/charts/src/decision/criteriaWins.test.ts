import { expect, test } from 'vitest'
import { marksOf, textsOf } from '../../../../tests/helpers/marksOf.ts'
import { criteriaWinsExample } from '../examples/decision.ts'
import { criteriaWins } from './criteriaWins.ts'

const options = { swing: 0.3, draws: 2000, ties: 0 }

test('a bar for each that is weighed, none for what is out, a dot on the first', () => {
  const figure = criteriaWinsExample()
  expect(marksOf(figure, 'area').map(({ x }) => x)).toEqual([
    [0, 0.43],
    [0, 0.91],
  ])
  expect(marksOf(figure, 'dot')).toMatchObject([{ x: 0.91 }])
  expect(textsOf(figure).filter((text) => text === 'out')).toHaveLength(2)
  expect(figure.finding).toMatch(/^“zoned loop” comes first in 91.% of the draws, “powered rollers” in 43.%\.$/)
})

test('where all are out, it says so; none at all is refused', () => {
  expect(criteriaWins([{ name: 'a', misses: ['x'], total: 1, wins: 0, first: false }], options).finding).toBe(
    'Every alternative misses a must-have: nothing is weighed.',
  )
  expect(() => criteriaWins([], options)).toThrow(RangeError)
})
