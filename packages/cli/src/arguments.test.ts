import { describe, expect, test } from 'vitest'
import { carrierCounts, replicationNumber, seedText, wholeNumber } from './arguments.ts'

describe('numbers of carriers', () => {
  test('a range, a list, both', () => {
    expect(carrierCounts('5..8')).toEqual([5, 6, 7, 8])
    expect(carrierCounts('12,5,8')).toEqual([5, 8, 12])
    expect(carrierCounts('5..7, 7..8 ,12')).toEqual([5, 6, 7, 8, 12])
    expect(carrierCounts('9')).toEqual([9])
  })
  test('a range that runs backwards is shown the right way round', () =>
    expect(() => carrierCounts('18..5')).toThrow('did you mean 5..18?'))
  test.each(['', '5-18', '5..', '..5', '5...8', '1.5', '-3', 'all', '5,,6', '5;6'])('"%s" is told how it is written', (text) =>
    expect(() => carrierCounts(text)).toThrow('such as 5..18'),
  )
  test.each(['0', '0..3', '1..1000000'])('"%s" lies outside what a loop can have', (text) =>
    expect(() => carrierCounts(text)).toThrow('from 1 to'),
  )
})

describe('counts', () => {
  test('a whole number', () => expect(wholeNumber('200')).toBe(200))
  test.each(['0', '-1', '2.5', '1e3', 'many', '', ' 5', '1000001'])('"%s" is refused', (text) =>
    expect(() => wholeNumber(text)).toThrow('whole number'),
  )
})

describe('seeds', () => {
  test('any text', () => expect([seedText('42'), seedText('monday run')]).toEqual(['42', 'monday run']))
  test('not an empty one, none with a slash', () => {
    expect(() => seedText('')).toThrow('at least one character')
    expect(() => seedText('a/b')).toThrow('two different streams')
  })
})

describe('replications', () => {
  test('from 0', () => expect(replicationNumber('0')).toBe(0))
  test.each(['-1', '1.5', '', 'first'])('"%s" is refused', (text) => expect(() => replicationNumber(text)).toThrow('numbered 0'))
})
