import { describe, expect, test } from 'vitest'
import {
  decimalsFor,
  formatDuration,
  formatMinutes,
  formatNumber,
  formatPerHour,
  formatSeconds,
  formatShare,
  formatStretch,
  formatWithHalfWidth,
  percent,
} from './format.ts'

const thin = '\u202f'

describe('formatNumber', () => {
  test('groups of three, never inside the fraction', () => {
    expect(formatNumber(1234567.891, 3)).toBe(`1${thin}234${thin}567.891`)
    expect(formatNumber(999.96, 1)).toBe(`1${thin}000.0`)
    expect(formatNumber(0.0001234, 7)).toBe('0.0001234')
  })
  test('decimals below zero round to tens and hundreds', () => {
    expect(formatNumber(1251, -2)).toBe(`1${thin}300`)
    expect(formatNumber(4, -1)).toBe('0')
  })
  test('a minus that is one, and none before zero', () => {
    expect(formatNumber(-2.25, 1)).toBe('\u22122.3')
    expect(formatNumber(-0.04, 1)).toBe('0.0')
    expect(formatNumber(-3, -1)).toBe('0')
  })
  test('what is no number is refused', () => {
    expect(() => formatNumber(Number.NaN, 0)).toThrow(RangeError)
    expect(() => formatNumber(Number.POSITIVE_INFINITY, 0)).toThrow(RangeError)
  })
})

test('seconds: one decimal, two of little, hours of much; parts like their whole', () => {
  expect([58.42, 60, 1.954, 7_199, 23_850].map((each) => formatSeconds(each))).toEqual([
    '58.4 s',
    '60 s',
    '1.95 s',
    `7${thin}199 s`,
    '6 h 38 min',
  ])
  expect(formatSeconds(8.18, 58.4)).toBe('8.2 s')
  expect(formatSeconds(450.1, 23_850)).toBe('7.5 min')
})

test('units per hour: two decimals below one, none from a thousand on', () => {
  expect([0, 0.16, 1, 39.94, 1_861].map(formatPerHour)).toEqual(['0.0', '0.16', '1.0', '39.9', `1${thin}861`])
})

describe('rounding by the interval', () => {
  test('one digit of the half-width, two where it starts with 1 or 2', () => {
    // JCGM 100:2008 (GUM), 7.2.6: at most two significant digits of an uncertainty
    expect([0.04, 0.013, 0.5, 3, 12, 45, 1].map((each) => decimalsFor(each))).toEqual([2, 3, 1, 0, 0, -1, 1])
  })
  test('no half-width, no rounding but the greatest allowed', () => {
    expect(decimalsFor(0, 2)).toBe(2)
    expect(formatWithHalfWidth(330, 0)).toBe('330')
  })
  test('few units are told with a decimal where chance is in them', () => {
    expect(formatWithHalfWidth(5.74, 0.23)).toBe('5.7 ± 0.2')
    expect(formatWithHalfWidth(19.96, 3)).toBe('20 ± 3')
    expect(formatWithHalfWidth(10, 0)).toBe('10')
  })
  test('units are whole, and a half-width is never said to be 0', () => {
    expect(formatWithHalfWidth(330.2133, 0.3)).toBe('330 ± 1')
    expect(formatWithHalfWidth(330.2133, 23.4)).toBe('330 ± 23')
    expect(formatWithHalfWidth(1330.2, 45)).toBe(`1${thin}330 ± 50`)
  })
  test('with decimals allowed', () => {
    expect(formatWithHalfWidth(42.678, 0.31, 2)).toBe('42.7 ± 0.3')
  })
})

test('shares: all and nothing are said of these alone', () => {
  expect([0, 0.004, 0.005, 0.5, 0.994, 0.996, 1].map(percent)).toEqual(['0', '< 1', '1', '50', '99', '> 99', '100'])
  expect(formatShare(0.834)).toBe(`83${thin}%`)
})

test('durations in the unit that reads best', () => {
  expect([0, 0.15, 42, 119, 120, 750, 7199, 7200, 27000, 28_799, 30_000, 3_603_600, 10, 4.95].map(formatDuration)).toEqual([
    '0 s',
    '0.15 s',
    '42 s',
    '119 s',
    '2 min',
    '12.5 min',
    '120 min',
    '2 h',
    '7 h 30 min',
    '8 h',
    '8 h 20 min',
    `1${thin}001 h`,
    '10 s',
    '4.95 s',
  ])
})

test('a stretch: in minutes, or from 2 h on each end as it reads best', () => {
  expect(formatStretch(0, 90)).toBe('0 to 1.5 min')
  expect(formatStretch(3600, 4500)).toBe('60 to 75 min')
  expect(formatStretch(5400, 8100)).toBe('90 min to 2 h 15 min')
})

test('minutes: one decimal below ten, and a little is not nothing', () => {
  expect([0, 1, 594, 597, 1290, 30000].map(formatMinutes)).toEqual(['0.0', '< 0.1', '9.9', '10', '22', '500'])
})
