import { expect, test } from 'vitest'
import { stationsOfCsv, stopsOfCsv, waitsOfCsv, weeksOfCsv } from './countedWeeks.ts'

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

test('names that the scenario does not have are told before anything runs', () => {
  expect(() => stationsOfCsv('station,seconds,n,sd\nS9,0,4,2\n', 's.csv', ['S1', 'S2'])).toThrow(
    's.csv:2: seconds is "0"; write a number above 0\ns.csv:2: station is "S9"; write one of "S1", "S2"',
  )
  expect(() => stopsOfCsv('stop,count,minutes,shifts\nleak,4,5,6\n', 't.csv', [])).toThrow('write nothing: the scenario has no stop')
  expect(stopsOfCsv('stop;count;minutes;shifts\nleak;4;5,5;6\n', 't.csv', ['leak'])).toEqual([
    { stop: 'leak', count: 4, minutes: 5.5, shifts: 6 },
  ])
})

test('waits are read in per cent, with or without its sign; empty cells were not measured', () => {
  expect(waitsOfCsv('station,blocked,starved\nS1,12 %,\nS2,,3.5\n', 's.csv')).toEqual([
    { station: 'S1', state: 'blocked', share: 0.12 },
    { station: 'S2', state: 'starved', share: 0.035 },
  ])
  expect(() => waitsOfCsv('station,blocked\nS1,120\n', 's.csv')).toThrow(
    's.csv:2: blocked is "120"; write per cent of the shift, from 0 to 100',
  )
})
