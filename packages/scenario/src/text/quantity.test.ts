import { describe, expect, test } from 'vitest'
import { type Dimension, parsePercent, parseQuantity, proposals } from './quantity.ts'

const code = (text: string, dimension: Dimension) => parseQuantity(text, dimension).fault?.sentence.code ?? null

describe('a quantity', () => {
  // International yard and pound agreement (1959): 1 in = 25.4 mm exactly, 1 ft = 12 in; 1 min = 60 s, 1 h = 3600 s, 1 d = 86400 s (SI Brochure, table 8).
  test.each<[string, Dimension, number]>([
    ['15 m/min', 'speed', 0.25],
    ['78.125 mm', 'length', 0.078125],
    ['78.1 mm', 'length', 0.0781],
    ['4 ft', 'length', 1.2192],
    ['48 in', 'length', 1.2192],
    ['60 ft/min', 'speed', 0.3048],
    ['7.5 h', 'duration', 27_000],
    ['250 ms', 'duration', 0.25],
    ['1 d', 'duration', 86_400],
    ['0.4 m/s²', 'acceleration', 0.4],
    ['0.4 m/s2', 'acceleration', 0.4],
    ['0.4m/s^2', 'acceleration', 0.4],
    ['1e-3 s', 'duration', 0.001],
    ['  45 s  ', 'duration', 45],
    ['0 s', 'duration', 0],
  ])('%s is exact', (text, dimension, value) => {
    expect(parseQuantity(text, dimension)).toEqual({ value, fault: null })
  })

  test('is rounded once: a factor applied to the double would be off', () => {
    expect(parseQuantity('1.3 mm', 'length').value).toBe(0.0013)
    expect(1.3 * 0.001).not.toBe(0.0013)
  })

  test.each<[string, Dimension, string]>([
    ['1,5 m', 'length', 'E_DECIMAL_COMMA'],
    ['1 500 m', 'length', 'E_BLANK_IN_NUMBER'],
    ['12', 'duration', 'E_UNIT_MISSING'],
    ['12 m', 'duration', 'E_UNIT_OTHER'],
    ['12 sec', 'duration', 'E_UNIT_UNKNOWN'],
    ['-12 s', 'duration', 'E_NEGATIVE'],
    ['fast', 'speed', 'E_NOT_A_QUANTITY'],
    ['.5 s', 'duration', 'E_NOT_A_QUANTITY'],
    ['1e999 s', 'duration', 'E_NOT_FINITE'],
    ['2e10 s', 'duration', 'E_BEYOND_REACH'],
    ['12 s each', 'duration', 'E_LEFTOVER'],
    ['2026-01-01', 'duration', 'E_UNIT_MISSING'],
    ['NaN s', 'duration', 'E_NOT_A_QUANTITY'],
    ['', 'duration', 'E_NOT_A_QUANTITY'],
  ])('%j is refused', (text, dimension, expected) => {
    expect(code(text, dimension)).toBe(expected)
  })

  test('a fault points at its own column', () => {
    expect(parseQuantity('12 m/mni', 'speed').fault).toMatchObject({ start: 3, length: 5 })
    expect(parseQuantity('12 s each', 'duration').fault).toMatchObject({ start: 4, length: 5 })
  })

  test('a wrong unit names the likely one', () => {
    const near = (text: string, dimension: Dimension) => parseQuantity(text, dimension).fault?.sentence.fix
    expect(near('3 mins', 'duration')).toContain('did you mean "min"?')
    expect(near('3 M', 'length')).toContain('did you mean "m"?')
    expect(near('3 m/mn', 'speed')).toContain('did you mean "m/min"?')
  })
})

test('a bare number gets the likeliest unit first', () => {
  expect(proposals('1.5', 'length')).toEqual(['1.5 m', '1.5 mm'])
  expect(proposals('800', 'length')).toEqual(['800 mm', '800 m'])
  expect(proposals('0.25', 'speed')).toEqual(['0.25 m/s', '0.25 m/min'])
  expect(proposals('15', 'speed')).toEqual(['15 m/min', '15 m/s'])
})

test('percentages are exact shares', () => {
  expect(parsePercent('65.83 %').value).toEqual({ digits: 6583n, scale: 4 })
  expect(['15', '15 s', '1,5 %', '-3 %', 'x', '15 % of it'].map((text) => parsePercent(text).fault?.sentence.code)).toEqual([
    'E_SHARE_NUMBER',
    'E_SHARE_NUMBER',
    'E_DECIMAL_COMMA',
    'E_NEGATIVE',
    'E_SHARE_NUMBER',
    'E_SHARE_NUMBER',
  ])
})

test('minutes and seconds as a watch shows them are told with the right numbers', () => {
  const fix = (text: string) => parseQuantity(text, 'duration').fault?.sentence.fix
  expect(fix('1:02')).toBe('write "62 s" for minutes and seconds, or "62 min" for hours and minutes')
  expect(fix('1:02:05')).toBe('write "3725 s"')
  expect(parseQuantity('1:72', 'duration').fault?.sentence.code).not.toBe('E_CLOCK_TIME')
})
