import { expect, test } from 'vitest'
import { type Cell, proseCell } from '../cells/cell.ts'
import { cells, chartCell, planCell } from '../../../../tests/helpers/pageCells.ts'
import { layoutOf } from './layout.ts'

const answer: Cell = { kind: 'answer', id: 'answer', sentences: ['So it is.'] }

test('the first picture before any heading stands beside the answer; what follows a heading is its section', () => {
  const { opening, lead, sections } = layoutOf([answer, chartCell, planCell, proseCell('why', '## Why\nBecause.'), ...cells.slice(-1)])
  expect(lead?.id).toBe('stations')
  expect(opening.map(({ id }) => id)).toEqual(['answer', 'stations', 'plan'])
  expect(sections.map(({ id, title, cells: own }) => [id, title, own.map((cell) => cell.id)])).toEqual([['why', 'Why', ['why', 'use']]])
})

test('without an answer no picture leads; prose without a heading opens no section', () => {
  const { lead, sections, opening } = layoutOf([proseCell('text', 'Text, ## not a heading'), chartCell])
  expect([lead, sections]).toEqual([null, []])
  expect(opening).toHaveLength(2)
})

test('a heading may fold its section', () => {
  const folded = { ...proseCell('inputs', '## Inputs'), folded: '22 zones' }
  expect(layoutOf([answer, folded]).sections[0]!.folded).toBe('22 zones')
})

test('a chart that is made for the answer leads from wherever it is shown, and keeps its place for its numbers', () => {
  const made = { ...chartCell, id: 'curve', lead: true }
  const { lead, opening, sections } = layoutOf([answer, planCell, proseCell('why', '## Why'), made])
  expect([lead?.id, opening.map(({ id }) => id), sections[0]!.cells.map(({ id }) => id)]).toEqual([
    'curve',
    ['answer', 'plan'],
    ['why', 'curve'],
  ])
})

test('an answer that leads opens a page that has none before its headings, and stays in its place', () => {
  const leading: Cell = { kind: 'answer', id: 'promise', sentences: ['330 units.'], lead: true }
  const told = [proseCell('sign', '## To sign'), leading]
  const { opening, sections } = layoutOf([proseCell('why', '## Why'), answer, ...told])
  expect(opening).toEqual([{ ...leading, id: 'promise-first' }])
  expect(sections.map(({ cells: own }) => own.map(({ id }) => id))).toEqual([
    ['why', 'answer'],
    ['sign', 'promise'],
  ])
  expect(layoutOf([answer, ...told]).opening).toEqual([answer])
})

test('what stands with the answer is taken from where it is shown, one of each title', () => {
  const aside = (id: string, title: string) => ({ ...proseCell(id, 'So.'), aside: title })
  const cellsOf = [answer, proseCell('why', '## Why'), aside('a', 'Limit'), aside('b', 'Promise'), aside('c', 'Limit')]
  const { asides, sections } = layoutOf(cellsOf)
  expect(asides.map(({ id }) => id)).toEqual(['a', 'b'])
  expect(sections[0]!.cells.map(({ id }) => id)).toEqual(['why', 'c'])
  expect(layoutOf(cellsOf.slice(1)).asides).toEqual([])
})
