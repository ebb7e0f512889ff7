import { expect, test } from 'vitest'
import { readTable } from '../table/bytes.ts'
import { readTimes } from './readTimes.ts'

const column = (text: string) => readTimes(readTable(new TextEncoder().encode(text), 't.csv')).column

test('bare numbers in one unit, every row of them', () => {
  expect(column('task;seconds\nwire;45,5\nwire;46,0\n')).toEqual({ time: 'seconds', task: 'task', variant: null, unit: 's' })
  expect(column('task,time (min)\nwire,0.75\n')).toMatchObject({ unit: 'min' })
})

test.each([
  ['a unit in the cell', 'task,seconds\nwire,45 s\n'],
  ['a row that was refused', 'task,seconds\nwire,45\nwire,\n'],
  ['ratings', 'task,seconds,rating\nwire,45,100\n'],
  ['a title above', 'Line 3,\ntask,seconds\nwire,45\n'],
  ['wide', 'cycle,wire (s),seal (s)\n1,45,30\n'],
])('not with %s', (_, text) => expect(column(text)).toBeNull())
