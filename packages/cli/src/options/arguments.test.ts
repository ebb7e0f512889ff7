import { describe, expect, test } from 'vitest'
import { carrierCounts, eventsFile, fileName, levelPercent, pageFile, replicationNumber, seedText, wholeNumber } from './arguments.ts'

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

describe('confidence', () => {
  test('in percent, with or without the sign', () => expect([levelPercent('95'), levelPercent('99.5 %')]).toEqual([95, 99.5]))
  test('a share is told the percent', () => {
    expect(() => levelPercent('0.95')).toThrow('write 95.')
    expect(() => levelPercent('0.999')).toThrow('write 99.9.')
  })
  test.each(['5', '100', '-1', '', 'high'])('"%s" is refused', (text) => expect(() => levelPercent(text)).toThrow('such as'))
})

describe('files', () => {
  test('a page is an HTML file', () => expect(['p.html', 'a/P.HTM'].map(pageFile)).toEqual(['p.html', 'a/P.HTM']))
  test.each([
    ['page.pdf', 'write page.html; a browser prints it to a PDF file'],
    ['out/page', 'write out/page.html'],
    ['a.b/page.v2.txt', 'write a.b/page.v2.html'],
    ['../page', 'write ../page.html'],
    ['', 'The name is empty'],
    ['  ', 'The name is empty'],
  ])('"%s" as a page', (text, said) => expect(() => pageFile(text)).toThrow(said))
  test('events go to any file of text', () => {
    expect(eventsFile('events.ndjson')).toBe('events.ndjson')
    expect(() => eventsFile('trace.pdf')).toThrow('write trace.html')
    expect(() => eventsFile('')).toThrow('The name is empty')
  })
  test('no name is empty', () => expect(() => fileName('')).toThrow('The name is empty'))
})
