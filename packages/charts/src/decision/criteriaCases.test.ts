import { expect, test } from 'vitest'
import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { criteriaCasesExample } from '../examples/decision.ts'
import { criteriaCases } from './criteriaCases.ts'

test('a cell for each change, darker where another comes first; a tie names all', () => {
  const figure = criteriaCasesExample()
  const cells = marksOf(figure, 'area')
  expect(cells).toHaveLength(12)
  expect(cells.filter(({ ink }) => ink === 'bar')).toHaveLength(4)
  expect(cells.find(({ words }) => words![1] === 'A, B')!.words![0]).toBe('powered rollers, zoned loop')
  expect(figure.finding).toBe('4 of 12 single changes of a weight change who comes first.')
  expect(figure.table.rows.filter(({ marked }) => marked)).toHaveLength(4)
})

test('nobody is said to be nobody; no change is refused', () => {
  const none = criteriaCases([{ criterion: 'floor', change: 'left out', winners: [] }], { agreed: ['a'], by: '30 %' })
  expect(none.table.rows[0]!.cells).toEqual(['floor', 'left out', 'nobody'])
  expect(() => criteriaCases([], { agreed: [], by: '30 %' })).toThrow(RangeError)
})
