import { expect, test } from 'vitest'
import { cells, chart } from '../../../../tests/helpers/pageCells.ts'
import { pageData, withRows } from './pageData.ts'

test('all views of figures, and of the tables that are switched', () => {
  const data = pageData(cells)
  expect(Object.keys(data.figures)).toEqual(['stations', 'plan'])
  expect(Object.keys(data.tables)).toEqual(['by-count'])
  expect(data.figures.stations).toMatchObject({ choice: 'carriers', shown: '6' })
  expect(Object.keys(data.figures.stations!.views)).toEqual(['5', '6'])
})

test('rows lie in the page once, and come back into the specification', () => {
  const { picture } = JSON.parse(JSON.stringify(pageData(cells))).figures.stations.views['5']
  expect(picture.spec.data).toEqual({ name: 'table' })
  const whole = chart('5').picture
  expect(whole.kind === 'chart' && withRows(picture)).toEqual(whole.kind === 'chart' && whole.spec)
})
