import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { tasksOfCsv, tasksOfLine } from './balanceTasks.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'

test('a table: names, times, what comes before', () => {
  expect(tasksOfCsv('task,seconds,after\nbolt,6,\nwire,2.5,bolt\ntest,5,bolt wire\n', 't.csv')).toEqual([
    { name: 'bolt', seconds: 6, after: [] },
    { name: 'wire', seconds: 2.5, after: ['bolt'] },
    { name: 'test', seconds: 5, after: ['bolt', 'wire'] },
  ])
  expect(tasksOfCsv('task;seconds\nbolt;6,5\n', 't.csv')).toEqual([{ name: 'bolt', seconds: 6.5, after: [] }])
})

test('under other usual headings, with names of several words', () => {
  const expected = [
    { name: 'fit pipe', seconds: 6, after: [] },
    { name: 'leak test', seconds: 2.5, after: ['fit pipe'] },
    { name: 'pack', seconds: 5, after: ['fit pipe', 'leak test'] },
  ]
  for (const text of [
    'Operation,Time (s),Predecessors\nfit pipe,6,-\nleak test,2.5,fit pipe\npack,5,"fit pipe, leak test"\n',
    'Task name;Seconds;Preceded by\nfit pipe;6;\nleak test;2,5;fit pipe\npack;5;fit pipe + leak test\n',
    'No,Work element,Duration [s],After\n1,fit pipe,6 s,\n2,leak test,2.5 s,fit pipe\n3,pack,5 s,fit pipe|leak test\n',
  ])
    expect(tasksOfCsv(text, 't.csv')).toEqual(expected)
})

test('a table that cannot be read is told by line, all at once', () => {
  expect(() => tasksOfCsv('what,when\n', 't.csv')).toThrow(
    'must name the columns task, seconds and, if there is an order, after; it names "what", "when"',
  )
  expect(() => tasksOfCsv('task,seconds\n', 't.csv')).toThrow('"t.csv": no task stands below the line of headings')
  expect(() => tasksOfCsv('task,time (min)\nbolt,6\n', 't.csv')).toThrow('the column "time (min)" is not in seconds')
  const wrong = 'task,seconds,after\nbolt,six,\nwire,-1,blot\nbolt,2,\n,3,\n'
  expect(() => tasksOfCsv(wrong, 't.csv')).toThrow(
    [
      '"t.csv", line 2: "six" is no time above 0 seconds',
      '"t.csv", line 3: "-1" is no time above 0 seconds',
      '"t.csv", line 3: there is no task "blot" to come after; did you mean "bolt"?',
      '"t.csv", line 4: "bolt" is named twice; give each task a name of its own',
      '"t.csv", line 5: the task has no name',
    ].join('\n'),
  )
})

test('of a scenario the work, in today’s order or by rules', () => {
  const { line } = readScenario(SMALL_LINE).scenario!
  expect(tasksOfLine(line, [], 'a.yaml')).toEqual([{ name: 'fit', seconds: expect.closeTo(70, 9), after: [] }])
  expect(() => tasksOfLine(line, ['fit<check'], 'a.yaml')).toThrow('there is no task "check"; there are fit')
  expect(() => tasksOfLine(line, ['fit'], 'a.yaml')).toThrow('write what comes first')
  const idle = { ...line, stations: line.stations.map((station) => ({ ...station, work: null })) }
  expect(() => tasksOfLine(idle, ['fit<check'], 'a.yaml')).toThrow('"a.yaml", stations: no station has work')
})

test('long and hostile tables are answered at once', () => {
  const rows = Array.from({ length: 2000 }, (_, index) => `task ${index},5,tusk ${index}`)
  const message = (text: string): string => {
    try {
      tasksOfCsv(text, 't.csv')
      return ''
    } catch (error) {
      return (error as Error).message
    }
  }
  const told = message(`task,seconds,after\n${rows.join('\n')}`)
  expect(told.split('\n')).toHaveLength(2000)
  expect(told.match(/did you mean/g)).toHaveLength(20)
  expect(message(`task,seconds\n${'x,1\n'.repeat(2001)}`)).toBe('"t.csv" has 2001 rows; tables of up to 2000 tasks are shared')
  // a search for the unit from every blank would take a time that grows with the square of their number
  expect(message(`task,seconds\nfit,"5${'\t'.repeat(150_000)}x"\n`)).toContain('is no time above 0 seconds')
  expect(tasksOfCsv('task,seconds\nfit,5 sec\npack,6   s\n', 't.csv').map(({ seconds }) => seconds)).toEqual([5, 6])
})
