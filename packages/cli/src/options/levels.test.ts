import { expect, test } from 'vitest'
import { atColumn, factorLevels, moreLevels } from './levels.ts'

const levels = (text: string) => factorLevels(`a.b=${text}`).levels

test('levels share the unit of the last', () => {
  expect(factorLevels(' drive.speed = 10, 12.5 ,15 m/min')).toEqual({ path: 'drive.speed', levels: ['10 m/min', '12.5 m/min', '15 m/min'] })
  expect(levels('60 s,2 min')).toEqual(['60 s', '2 min'])
  expect(levels('5,6')).toEqual(['5', '6'])
  expect(levels('10,20 %')).toEqual(['10 %', '20 %'])
  expect(levels('exponential 4 min,5 min')).toEqual(['exponential 4 min', '5 min'])
})

test('commas within brackets and quotation marks part nothing; bars part whatever stands between', () => {
  expect(levels('[Z01, Z05],[Z02, Z06]')).toEqual(['[Z01, Z05]', '[Z02, Z06]'])
  expect(levels('{ kind: gamma, mean: 40 s, cv: 0.2 }|45 s ± 15 %')).toEqual(['{ kind: gamma, mean: 40 s, cv: 0.2 }', '45 s ± 15 %'])
  expect(levels('"a, b","c|d"')).toEqual(['"a, b"', '"c|d"'])
  expect(levels('6 × 1 m, 4 × 2 m|10 zones of 1 m')).toEqual(['6 × 1 m, 4 × 2 m', '10 zones of 1 m'])
})

test('the option again adds levels, or another factor', () => {
  const found = ['a=1', 'b=x', 'a=2 s'].reduce<ReturnType<typeof moreLevels>>((before, text) => moreLevels(text, before), [])
  expect(found).toEqual([
    { path: 'a', levels: ['1', '2 s'] },
    { path: 'b', levels: ['x'] },
  ])
})

test('what is missing is shown at its column', () => {
  const said = (text: string) => {
    try {
      factorLevels(text)
    } catch (error) {
      return (error as Error).message
    }
    return 'nothing'
  }
  expect(said('drive.speed=10,,15 m/min')).toBe(
    `There is no level here; write one, or leave out the sign before it.\n  drive.speed=10,,15 m/min\n  ${' '.repeat(15)}^`,
  )
  expect(said('drive.speed=')).toBe(`There is no level behind "=".\n  drive.speed=\n  ${' '.repeat(12)}^`)
  expect(said('drive.speed')).toMatch(/^Write a path and its levels, such as "drive\.speed=10,12,15 m\/min"\./)
})

test('of a long text the part around the place is shown', () => {
  const error = atColumn(`${'a'.repeat(100)},,${'b'.repeat(100)}`, 101, 'Here.')
  const [, shown, caret] = error.message.split('\n')
  expect(shown!.length).toBeLessThan(70)
  expect(shown!.slice(caret!.indexOf('^') - 1, caret!.indexOf('^') + 2)).toBe(',,b')
})
