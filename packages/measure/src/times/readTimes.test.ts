import { describe, expect, test } from 'vitest'
import { workbookBytes } from '../../../../tests/helpers/workbook.ts'
import { readTable } from '../table/bytes.ts'
import { readTimes, type TimeOptions } from './readTimes.ts'

const read = (text: string, options: TimeOptions = {}) => readTimes(readTable(new TextEncoder().encode(text), 't.csv'), options)
const times = (text: string, options: TimeOptions = {}) =>
  read(text, options).observations.map(({ task, observedSeconds }) => [task, observedSeconds])

describe('forms', () => {
  test('long, with decimal commas, variants, operators and ratings', () => {
    const { form, observations, account, column } = read(
      'Task;Model;Operator;Time (s);Rating\nwire;small;A;45,5;105\nwire;large;B;51,0;95\n',
    )
    expect(form).toBe('long')
    expect(
      observations.map(({ task, variant, operator, observedSeconds, rating }) => [task, variant, operator, observedSeconds, rating]),
    ).toEqual([
      ['wire', 'small', 'A', 45.5, 1.05],
      ['wire', 'large', 'B', 51, 0.95],
    ])
    expect([account.rows, account.read, column]).toEqual([2, 2, null])
  })
  test('a row for each cycle', () => {
    const { form, observations } = read('cycle,wire (s),seal (min)\n1,45,0.5\n2,47,0.6\n3,,0.7\n')
    expect(form).toBe('cycles')
    expect(observations.map(({ task, observedSeconds }) => [task, observedSeconds])).toEqual([
      ['wire', 45],
      ['seal', 30],
      ['wire', 47],
      ['seal', 36],
      ['seal', 42],
    ])
  })
  test('a row for each task', () => {
    expect(times('element;1;2;3\nwire;45;47;44\nseal;30;;31\n')).toEqual([
      ['wire', 45],
      ['wire', 47],
      ['wire', 44],
      ['seal', 30],
      ['seal', 31],
    ])
  })
  test('start and end, past midnight', () => {
    expect(times('task,start,end\nwire,23:59:30,0:00:20\nwire,00:01:00,00:01:45\n')).toEqual([
      ['wire', 50],
      ['wire', 45],
    ])
  })
  test('one column', () =>
    expect(times('seconds\n45\n47\n', { task: 'wire' })).toEqual([
      ['wire', 45],
      ['wire', 47],
    ]))
})

describe('units', () => {
  test.each([
    ['task,time\nwire,0:45\nwire,1:05\n', {}, [45, 65]],
    ['task,time (min)\nwire,0.75\n', {}, [45]],
    ['task,time\nwire,45 s\nwire,1 min\n', {}, [45, 60]],
    ['task,time\nwire,0.75\n', { unit: 'min' }, [45]],
    ['task,minutes\nwire,0.75\n', {}, [45]],
  ] as const)('%j', (text, options, seconds) => expect(times(text, options).map(([, one]) => one)).toEqual(seconds))
  test('bare numbers are seconds where they can be, and this is said', () => {
    expect(read('task,time\nwire,45\n').doubts).toEqual([
      'No unit stands above the numbers: they are taken as seconds. If they are not, say so (`--unit min`).',
    ])
    expect(() => read('task,time\nwire,0.75\nwire,0.8\n')).toThrow('may be seconds or minutes; say which (--unit s or --unit min)')
  })
})

describe('what is no time is refused with its place and reason', () => {
  const reasons = (text: string) => read(text).account.refusals.map(({ place, reason }) => `${place}: ${reason}`)
  test('rows of sums without a word', () => {
    expect(reasons('task,time (s)\nwire,45\nwire,46\nwire,47\n,138\n')).toEqual([
      'line 5, column 2 ("time (s)"): it is the sum of the times above it',
    ])
  })
  test('a column of sums', () => {
    const { observations, account } = read('cycle,a (s),b (s),all (s)\n1,10,20,30\n2,11,21,32\n3,12,22,34\n')
    expect(observations.map(({ task }) => task)).not.toContain('all')
    expect(account.refusals.map(({ reason }) => reason)).toEqual(Array(3).fill('its column is the sum of the others'))
  })
  test('words, zeros, formulas, rows without a task, ratings that cannot be', () => {
    expect(
      reasons(
        'task,time (s),rating\nwire,45,100\nwire,approx 40,100\nwire,0,100\nwire,-3,100\n,44,100\n=cmd(),44,100\nwire,46,300\nwire,90000,100\n',
      ),
    ).toEqual([
      'line 3, column 2 ("time (s)"): "approx 40" is no time',
      'line 4, column 2 ("time (s)"): "0" is no time above 0',
      'line 5, column 2 ("time (s)"): "-3" is no time above 0',
      'line 6, column 1 ("task"): it names no task (of merged cells only the first keeps its text: fill in the others)',
      'line 7, column 1 ("task"): "=cmd()" is a formula, and nothing is computed',
      'line 8, column 3 ("rating"): "300" is no rating from 40 to 200 %',
      'line 9, column 2 ("time (s)"): "90000" is more than a day for one task',
    ])
  })
  test('decimal commas in a table parted by commas', () => {
    expect(() => read('task,time (s)\nwire,45,5\nwire,46,5\n')).toThrow(
      'no row can be read; here it has 3 cells under 2 heads; decimal commas need',
    )
  })
})

test('workbooks: times of a spreadsheet, merged tasks', () => {
  const rows = [
    ['Task', 'Time'],
    ['wire', { style: 1, inside: `<v>${45 / 86400}</v>` }],
    [null, { style: 1, inside: `<v>${65 / 86400}</v>` }],
  ]
  const table = readTable(workbookBytes({ rows, merges: ['A2:A3'], formats: ['mm:ss'] }), 'w.xlsx')
  expect(readTimes(table).observations.map(({ task, observedSeconds }) => [task, observedSeconds])).toEqual([
    ['wire', 45],
    ['wire', 65],
  ])
})

test('a plain long CSV table may be named by a scenario', () => {
  expect(read('task,variant,seconds\nwire,small,45\n').column).toEqual({ time: 'seconds', task: 'task', variant: 'variant', unit: 's' })
  expect(read('task,variant,seconds\nwire,small,45\nwire,small,x\n').column).toBeNull()
})
