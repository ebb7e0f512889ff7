import { tableOf, wordColumn } from '@loopwright/charts/table'
import { expect, test } from 'vitest'
import { type Cell, oneView, proseCell, tableCell, warningCell } from '../../packages/notebook/src/cells/cell.ts'
import type { Figure } from '../../packages/notebook/src/cells/figure.ts'
import { pageOf, terminalOf, TOLD_TWICE, toldOnce, toldTwice } from './toldTwice.ts'

const table = tableOf<readonly [string, string]>({
  caption: 'Lines',
  columns: [wordColumn('Line', 'line', 'name', ([name]) => name), { head: 'Units a\nshift', text: ([, units]) => units, data: [] }],
  rows: [['today & now', '330 ± 1']],
  note: 'Means with 95 % intervals.',
})
const cells: readonly Cell[] = [
  { kind: 'answer', id: 'a', sentences: ['Put S5 at Z14: that makes 7.8 more. Nothing else does.'] },
  warningCell('w', 'Stopped early', 'Some are in.\n- “today” & others'),
  proseCell('p', 'Prose with `loopwright run` in it.'),
  tableCell('t', table),
  { kind: 'sure', id: 's', sentences: ['More replications narrow it.'] },
]

const figure: Figure = {
  finding: 'Breaks cost most.',
  picture: { kind: 'chart', spec: {} },
  alt: 'Bars.',
  howToRead: 'Read it.',
  table,
  tableOpen: true,
}
const chart: Cell = { kind: 'chart', id: 'x', views: oneView(figure) }

test('the same cells are told twice', () => expect(toldTwice([...cells, chart])).toEqual(TOLD_TWICE))

test('what is made for the page alone is not missed in the terminal', () => {
  const caution: Cell = { kind: 'caution', id: 'c', tone: 'caution', title: 'Use', markdown: 'Local codes decide.' }
  const closed: Cell = { kind: 'chart', id: 'y', views: oneView({ ...figure, tableOpen: false }) }
  expect(toldTwice([{ ...proseCell('p', 'For the page.'), pageOnly: true }, caution, closed])).toEqual(TOLD_TWICE)
})

test('a sentence, a head or a number that one of them tells alone is found', () => {
  const [terminal, page] = [terminalOf(cells), pageOf(cells)]
  expect(toldOnce(terminal.replace('330 ± 1', '330 ± 2'), page)).toEqual({ inTerminalOnly: ['330 ± 2'], onPageOnly: ['330 ± 1'] })
  expect(toldOnce(`${terminal}\n\nIt is so. And more.`, [...page, 'It is so. But less.'])).toEqual({
    inTerminalOnly: ['And more.'],
    onPageOnly: ['But less.'],
  })
  expect(toldOnce(terminal, [...page, 'At most'])).toEqual({ inTerminalOnly: [], onPageOnly: ['At most'] })
  expect(
    toldOnce(
      terminal,
      page.filter((text) => text !== 'Stopped early'),
    ).inTerminalOnly,
  ).toEqual(['Stopped early'])
})
