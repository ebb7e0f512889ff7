import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { tasksOfCsv, tasksOfLine } from './balanceTasks.ts'
import { SMALL_LINE } from './memoryShell.ts'

test('a table: names, times, what comes before', () => {
  expect(tasksOfCsv('task,seconds,after\nbolt,6,\nwire,2.5,bolt\ntest,5,bolt wire\n', 't.csv')).toEqual([
    { name: 'bolt', seconds: 6, after: [] },
    { name: 'wire', seconds: 2.5, after: ['bolt'] },
    { name: 'test', seconds: 5, after: ['bolt', 'wire'] },
  ])
  expect(tasksOfCsv('task;seconds\nbolt;6,5\n', 't.csv')).toEqual([{ name: 'bolt', seconds: 6.5, after: [] }])
})

test('a table that cannot be read is told by line', () => {
  expect(() => tasksOfCsv('what,when\n', 't.csv')).toThrow('must name the columns task, seconds')
  expect(() => tasksOfCsv('task,seconds\nbolt,six\n', 't.csv')).toThrow('"t.csv", line 2: "six" is no time')
})

test('of a scenario the work, in today’s order or by rules', () => {
  const { line } = readScenario(SMALL_LINE, 'small.yaml').scenario!
  expect(tasksOfLine(line, [])).toEqual([{ name: 'fit', seconds: expect.closeTo(70, 9), after: [] }])
  expect(() => tasksOfLine(line, ['fit<check'])).toThrow('there is no task "check"; there are fit')
  expect(() => tasksOfLine(line, ['fit'])).toThrow('write what comes first')
})
