import { expect, test } from 'vitest'
import { headOf } from '../table/heads.ts'
import { textCell } from '../table/rawTable.ts'
import { cycleColumns, entriesOf, taskColumns } from './timeForm.ts'

const heads = (...texts: string[]) => texts.map(headOf)

test('columns of cycles and of tasks', () => {
  expect(cycleColumns(new Map([['task', 0]]), heads('task', '1', 'Cycle 2', 'remark'))).toEqual([1, 2])
  expect(taskColumns(new Map([['cycle', 0]]), heads('cycle', 'wire (s)', 'seal', 'Total'))).toEqual([1, 2])
  expect(taskColumns(new Map(), heads('a', 'b'))).toEqual([])
})

test('of a row for each cycle the heads are the tasks, without their units', () => {
  const columns = { heads: heads('cycle', 'wire (s)', 'seal_s'), at: new Map([['cycle', 0]]), bodyFrom: 1, headRows: 1, said: [] }
  const row = { line: 2, lines: 1, cells: ['1', '45', '30'].map(textCell) }
  const entries = entriesOf('cycles', columns, [1, 2], [row], undefined, (_, cell) => ({ ok: true, value: Number(cell.text) }))
  expect(entries[0]!.map(({ task, time }) => [task, time.ok && time.value])).toEqual([
    ['wire', 45],
    ['seal', 30],
  ])
})
