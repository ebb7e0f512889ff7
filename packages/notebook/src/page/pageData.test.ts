import { expect, test } from 'vitest'
import { cells, ownCell } from '../../../../tests/helpers/pageCells.ts'
import { pageData } from './pageData.ts'

test('all views of figures, and of the tables that are switched', () => {
  const data = pageData(cells)
  expect(Object.keys(data.figures)).toEqual(['stations', 'plan'])
  expect(Object.keys(data.tables)).toEqual(['by-count'])
  expect(data.figures.stations).toMatchObject({ choice: 'carriers', shown: '6' })
  expect(Object.keys(data.figures.stations!.views)).toEqual(['5', '6'])
})

test('a picture that is never switched stands in the page and not in its data, but for a chart of one’s own', () => {
  const [first] = cells.flatMap((cell) => (cell.kind === 'chart' ? [cell] : []))
  const fixed = { ...first!, id: 'fixed', views: { ...first!.views, choice: null } }
  expect(Object.keys(pageData([fixed, ownCell]).figures)).toEqual(['own'])
})
