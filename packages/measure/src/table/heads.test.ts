import { describe, expect, test } from 'vitest'
import { findColumns, headOf } from './heads.ts'
import { textTable } from './textTable.ts'

const roles = { task: ['task', 'step'], time: ['time', 'seconds', 'duration'] }
const find = (text: string, named: Record<string, string> = {}) =>
  findColumns(textTable(text, 't.csv'), roles, named, (at) => at.has('time'), 'a time study has a column of times')

test.each([
  ['Time (min)', 'time', 'min'],
  ['Duration [s]', 'duration', 's'],
  ['time_s', 'time', 's'],
  ['Time in min', 'time', 'min'],
  ['Seconds', 'seconds', 's'],
  ['Task', 'task', null],
  ['Zeit, Sek.', 'zeit', 's'],
  ['Stations', 'stations', null],
])('%s', (text, plain, unit) => expect(headOf(text)).toEqual({ text, plain, unit }))

describe('columns', () => {
  test('by their usual words, under a title and blank lines', () => {
    const { at, bodyFrom, said } = find('Study of line 3;\n;\nStep;Duration [s]\na;1\n')
    expect([at.get('task'), at.get('time'), bodyFrom]).toEqual([0, 1, 3])
    expect(said).toEqual(['task: "Step"', 'time: "Duration [s]"'])
  })
  test('two rows of heads: the second holds units', () => {
    const { heads, headRows } = find('Task;Time\n;(min)\na;1\n')
    expect([heads[1]!.text, heads[1]!.unit, headRows]).toEqual(['Time (min)', 'min', 2])
  })
  test('named by the user', () => expect(find('what;lasts\na;1\n', { time: 'lasts' }).at.get('time')).toBe(1))
})

describe('what cannot be', () => {
  test('no heads', () =>
    expect(() => find('a;1\nb;2\n')).toThrow(
      '"t.csv", line 1: no row names the columns: a time study has a column of times; found "a" and "1"',
    ))
  test('a named column that is not there', () =>
    expect(() => find('task;time\na;1\n', { time: 'lasts' })).toThrow('no column "lasts" for the time; there are "task" and "time"'))
  test('a row that never ends', () =>
    expect(() => find(`task;time${';x'.repeat(2000)}\na;1\n`)).toThrow('line 1: it has 2002 cells, and no table is wider than 2000'))
  test('two columns of one name', () =>
    expect(() => find('task;time;time\na;1;2\n')).toThrow(
      '"t.csv", line 1, column 2 ("time"): 2 columns could be the time: line 1, column 2 ("time"), line 1, column 3 ("time")',
    ))
})

test('a text that is no head takes no time', () => {
  const start = process.cpuUsage()
  expect(headOf(`a${'-'.repeat(200_000)}`).unit).toBeNull()
  expect(headOf('['.repeat(200_000)).unit).toBeNull()
  const { user, system } = process.cpuUsage(start)
  expect((user + system) / 1000).toBeLessThan(2000)
})
