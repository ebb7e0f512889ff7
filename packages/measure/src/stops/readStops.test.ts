import { describe, expect, test } from 'vitest'
import { readTable } from '../table/bytes.ts'
import { instantText } from '../values/instant.ts'
import { readStops, type StopLogOptions } from './readStops.ts'

const read = (text: string, options: StopLogOptions = {}) => readStops(readTable(new TextEncoder().encode(text), 's.csv'), options)
const told = (text: string, options: StopLogOptions = {}) =>
  read(text, options).stops.map(({ place, cause, start, end }) => [
    place,
    cause,
    instantText(start),
    end === null ? null : (end - start) / 60,
  ])

describe('how people keep them', () => {
  test.each<[string, string, unknown[]]>([
    ['start and end', 'station;cause;start;end\nS3;tool;03.11.2026 06:10;03.11.2026 06:15\n', ['S3', 'tool', '2026-11-03 06:10', 5]],
    ['start and minutes', 'machine,reason,start,duration (min)\nS3,tool,2026-11-03 06:10,4.5\n', ['S3', 'tool', '2026-11-03 06:10', 4.5]],
    ['day, clock times, past midnight', 'date,place,from,to\n2026-11-03,S3,23:58,00:04\n', ['S3', 'stop', '2026-11-03 23:58', 6]],
    ['end as a clock time', 'place,start,end\nS3,2026-11-03 23:58,00:04\n', ['S3', 'stop', '2026-11-03 23:58', 6]],
    ['not over yet', 'place,start,end\nS3,2026-11-03 06:10,\n', ['S3', 'stop', '2026-11-03 06:10', null]],
  ])('%s', (_, text, expected) => expect(told(text)).toEqual([expected]))
})

test('what is no stop is refused with its place and reason', () => {
  const { account } = read(
    'place,cause,start,end,min\nS3,a,2026-11-03 06:10,2026-11-03 06:15,5\nS3,a,2026-11-03 06:10,2026-11-03 06:15,5\nS3,a,2026-11-03 07:10,2026-11-03 06:15,\nS3,a,2026-11-03 08:10,2026-11-03 08:15,50\n,a,2026-11-03 09:10,2026-11-03 09:15,5\nS3,a,soon,2026-11-03 09:15,5\nS3,a,2026-11-03 10:10,2027-11-03 10:15,\nS3,=x,2026-11-03 11:10,2026-11-03 11:15,\n',
  )
  expect(account.read + account.refusals.length).toBe(account.rows)
  expect(account.refusals.map(({ place, reason }) => `${place}: ${reason}`)).toEqual([
    'line 3: it is the same stop as in line 2',
    'line 4, column 4 ("end"): it ends before it starts',
    'line 5, column 5 ("min"): it says 50, but from its start to its end are 5 min',
    'line 6, column 1 ("place"): it names no place',
    'line 7, column 3 ("start"): "soon" is no day or time',
    'line 8, column 4 ("end"): it would last more than a month',
    'line 9, column 2 ("cause"): a name in it is a formula, and nothing is computed',
  ])
})

test('a clock time before the start is of the next day only where the stop is short', () => {
  const text = 'date,place,from,to\n2026-11-03,S3,11:20,11:05\n2026-11-03,S3,22:50,01:05\n'
  expect(told(text)).toEqual([['S3', 'stop', '2026-11-03 22:50', 135]])
  expect(read(text).account.refusals[0]!.reason).toBe('it ends before it starts')
})

test('what cannot be known is asked for', () => {
  expect(() => read('place,start,duration\nS3,2026-11-03 06:10,1:05\n')).toThrow('say which (--clock m:ss or --clock h:mm)')
  expect(told('place,start,duration\nS3,2026-11-03 06:10,1:05\n', { clock: 'h:mm' })[0]![3]).toBe(65)
  expect(() => read('place,start,end\nS3,06:10,06:15\n')).toThrow('a clock time and no day')
  expect(() => read('place,start,end\nS3,03/11/2026 06:10,03/11/2026 06:15\n')).toThrow('the day or the month may come first')
})
