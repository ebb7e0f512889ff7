import { expect, test } from 'vitest'
import type { Verdict } from './judge.ts'
import { proofCells, proofSentences } from './proofPage.ts'

const verdict = (family: string, id: string, simulated: number, holds = true): Verdict => ({
  family,
  id,
  quantity: 'output per second',
  source: 'a book',
  value: 2,
  simulated,
  standardError: 0.01,
  replications: 60,
  sees: 0.009,
  holds,
})
const verdicts = [verdict('rings', 'a-1', 2.01), verdict('rings', 'b', 1.99), verdict('queues', 'c', 2.5, false)]

test('the sentences count what holds, and say how small an error is found', () => {
  const { summary, sure } = proofSentences(verdicts, 4)
  expect(summary).toBe('3 of 4 exactly known values judged, 1 do not hold.')
  expect(sure).toMatch(/chance of 0\.000001\. A mean output that is 1\.00 % off.* 99\.9 %\.$/)
})

test('a line for each family, then its values under its source, named once', () => {
  const cells = proofCells(verdicts, 4, new Map([['rings', 'Closed rings.']]))
  const tables = cells.flatMap((cell) => (cell.kind === 'table' ? [cell.views.of[0]!.content] : []))
  expect(tables.map(({ rows }) => rows.map(({ cells: [first] }) => first))).toEqual([['rings', 'queues'], ['a\u20111', 'b'], ['c']])
  expect(tables[0]!.rows.map((row) => [...row.cells, row.marked])).toEqual([
    ['rings', '2', '2', '1.0', false],
    ['queues', '1', '0', '50.0', true],
  ])
  expect(tables[1]!.rows[0]!.cells).toEqual(['a\u20111', '2.0000', '0.50 %', '0.90 %', '2.01000', '60'])
  expect(cells.flatMap((cell) => (cell.kind === 'prose' ? [cell.markdown] : []))[0]).toBe('## rings\n\nClosed rings.\n\nSource: a book.')
})
