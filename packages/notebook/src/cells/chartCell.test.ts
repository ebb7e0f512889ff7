import { drivers } from '@loopwright/charts'
import { expect, test } from 'vitest'
import { shownView } from './cell.ts'
import { chartCell } from './chartCell.ts'

test('a chart keeps its finding, picture, alternative and table', () => {
  const figure = drivers({ drivers: [], limits: [], step: 0.05 })
  const cell = chartCell('bars', figure)
  expect([cell.id, cell.views.choice]).toEqual(['bars', null])
  expect(shownView(cell.views)).toMatchObject({
    finding: figure.finding,
    alt: figure.alt,
    table: figure.table,
    picture: { kind: 'drawing', drawing: figure.drawing },
  })
})
