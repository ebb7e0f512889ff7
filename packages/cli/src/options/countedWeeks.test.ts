import { expect, test } from 'vitest'
import { stationsOfCsv, weeksOfCsv } from './countedWeeks.ts'

test('columns by their heads, in any order, with comma or semicolon', () => {
  expect(weeksOfCsv('shifts;week;units\n10;W1;3300\n8;W2;2650\n', 'w.csv')).toEqual([
    { name: 'W1', units: 3300, shifts: 10 },
    { name: 'W2', units: 2650, shifts: 8 },
  ])
  expect(stationsOfCsv('station,seconds,n,sd\nS6,66.5,30,3.1\n', 's.csv')).toEqual([{ station: 'S6', seconds: 66.5, n: 30, sd: 3.1 }])
})

test('every wrong cell is told with file, line and remedy, all at once', () => {
  const text = 'week,units,shifts\nW1,3300,10\n,abc,0\n'
  expect(() => weeksOfCsv(text, 'w.csv')).toThrow(
    'w.csv:3: units is "abc"; write a whole number from 0 on\nw.csv:3: shifts is "0"; write a whole number from 1 on\nw.csv:3: week is ""; write a name\n3 problems found; nothing was run.',
  )
})

test('a missing column and an empty table are named', () => {
  expect(() => weeksOfCsv('week,units\nW1,3\n', 'w.csv')).toThrow('w.csv:1: there is no column "shifts"')
  expect(() => weeksOfCsv('week;units;Schichten\nW1;3;1\n', 'w.csv')).toThrow('and were "week", "units", "Schichten"')
  expect(() => weeksOfCsv('week,units,shifts\n', 'w.csv')).toThrow('w.csv has a heading and no rows')
})

test('a number of a thousand digits is none', () =>
  expect(() => stationsOfCsv(`station,seconds,n,sd\nS6,66,30,${'3'.repeat(1000)}\n`, 's.csv')).toThrow('write a number from 0 on'))
