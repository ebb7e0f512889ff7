import { taskBalance } from '@loopwright/study/change'
import { expect, test } from 'vitest'
import { terminalText } from '../terminal/terminal.ts'
import { balanceStory } from './balanceStory.ts'

const tasks = [
  { name: 'frame', seconds: 6, after: [] },
  { name: 'motor', seconds: 3.5, after: ['frame'] },
  { name: 'cover', seconds: 4, after: ['motor'] },
]
const told = (asked: Parameters<typeof taskBalance>[1], of = tasks) => balanceStory(of, taskBalance(of, asked), asked)

test('of a cycle: how few stations; of a number of stations: what cycle', () => {
  // 6 + 3.5 = 9.5 and 4; of two stations 6 | 3.5 + 4 = 7.5
  const cycle = told({ cycleSeconds: 10 })
  expect(cycle.question).toBe('How few stations can keep a cycle of 10.0 s?')
  expect(cycle.answer.sentences).toEqual(['2 stations can share the 3 tasks in a cycle of 10.0 s by mean times; fewer cannot.'])
  const stations = told({ stations: 2 })
  expect(stations.question).toBe('What cycle can 2 stations keep?')
  expect(stations.answer.sentences).toEqual(['2 stations can share the 3 tasks in a cycle of 7.5 s by mean times, and no shorter one.'])
})

test('of more stations than it takes: which keep the same cycle, and why', () => {
  // the longest task takes 6 s, and 3.5 + 4 is more
  const five = told({ stations: 5 })
  expect(five.question).toBe('What cycle can 5 stations keep?')
  expect(five.answer.sentences).toEqual([
    '3 stations can share the 3 tasks in a cycle of 6.0 s by mean times, and no shorter one.',
    'Of the 5 stations asked for, 3 are enough: no task is split, so that with all 5 the cycle is no shorter.',
  ])
  expect(told({ stations: 3 }).answer.sentences).toHaveLength(1)
})

test('one station, and decimals only where a time has some', () => {
  const whole = tasks.map((task) => ({ ...task, seconds: Math.ceil(task.seconds) }))
  expect(told({ cycleSeconds: 60 }, whole).answer.sentences).toEqual(['1 station can share the 3 tasks in a cycle of 60 s by mean times.'])
})

test('stations and tasks as tables, whose numbers add up', () => {
  const story = told({ stations: 2 })
  const rows = story.stations.views.of[0]!.content.rows.map(({ values }) => values)
  expect(rows).toEqual([
    [1, 6, 1.5, 'frame'],
    [2, 7.5, 0, 'motor, cover'],
  ])
  expect(story.tasks.views.of[0]!.content.rows.map(({ values }) => values)).toEqual([
    ['frame', 6, '', 1],
    ['motor', 3.5, 'frame', 2],
    ['cover', 4, 'motor', 2],
  ])
  expect(story.cells.at(-1)).toMatchObject({ kind: 'caution', id: 'caution-use' })
})

test('a long list of tasks is nowhere cut', () => {
  const many = Array.from({ length: 14 }, (_, index) => ({ name: `fasten bracket ${index + 1}`, seconds: 1, after: [] }))
  const story = told({ cycleSeconds: 20 }, many)
  const text = terminalText(story.stations)
  for (const { name } of many) expect(text.replaceAll(/\s+/g, ' ')).toContain(name)
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
})
