import { describe, expect, test } from 'vitest'
import { textCell } from '../table/rawTable.ts'
import { readDuration, timeUnit } from './duration.ts'

const style = { numbers: 'point', unit: 's', clock: 'm:ss' } as const
const of = (text: string, more: object = {}) => {
  const read = readDuration(textCell(text), { ...style, ...more })
  return read.ok ? read.value : read.reason
}

test.each([
  ['45', {}, 45],
  ['45.5 s', {}, 45.5],
  ['0,75 min', { numbers: 'comma' }, 45],
  ['1:05', {}, 65],
  ['1:05.4', {}, 65.4],
  ['0:01:05', {}, 65],
  ['1:05', { clock: 'h:mm' }, 3900],
  ['1 min 5 s', {}, 65],
  ['1m5s', {}, '"1m5s" is no time'],
  ['1\'05"', {}, 65],
  ['2 h', {}, 7200],
  ['75', { unit: 'cmin' }, 45],
])('%s %j', (text, more, expected) => expect(of(text, more)).toBe(expected))

describe('what is no time says why', () => {
  test.each([
    ['', 'it is empty'],
    ['n/a', '"n/a" is no time'],
    ['45-50', '"45-50" is no time'],
    ['~45', '"~45" is no time'],
    ['=45+1', '"=45+1" is a formula, and nothing is computed'],
    ['5 s 1 min', '"5 s 1 min" is no time'],
    ['1:75', '"1:75" is no time'],
  ])('%j', (text, reason) => expect(of(text)).toBe(reason))
  test('no unit, and two readings', () => {
    expect(of('45', { unit: null })).toBe('"45" has no unit')
    expect(of('1,234')).toContain('may have decimals or thousands behind its comma')
  })
  test('what a spreadsheet holds as hours and minutes', () => {
    const cell = { kind: 'time', text: '1:05:00', value: 3900, hoursAndMinutes: true } as const
    expect(readDuration(cell, style)).toMatchObject({ ok: false, reason: expect.stringContaining('1 h 5 min') })
    expect(readDuration(cell, { ...style, clock: 'h:mm' })).toEqual({ ok: true, value: 3900 })
  })
})

test('units by their usual names', () => expect(['Sek.', 'MIN', 'x', '"'].map(timeUnit)).toEqual(['s', 'min', null, 's']))
