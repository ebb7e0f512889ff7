import { describe, expect, test } from 'vitest'
import { parsePhrase } from './phrase.ts'

describe('a phrase', () => {
  test.each([
    ['45 s', { kind: 'constant', value: 45 }],
    ['1.5 min', { kind: 'constant', value: 90 }],
    ['45 s ± 15 %', { kind: 'lognormal', mean: 45, cv: 0.15 }],
    ['45 s +/- 15 %', { kind: 'lognormal', mean: 45, cv: 0.15 }],
    ['45s±15%', { kind: 'lognormal', mean: 45, cv: 0.15 }],
    ['45 s ± 0 %', { kind: 'constant', value: 45 }],
    ['lognormal 4 min ± 65.83 %', { kind: 'lognormal', mean: 240, cv: 0.6583 }],
    ['gamma 4 min ± 66 %', { kind: 'gamma', mean: 240, cv: 0.66 }],
    ['exponential 4 min', { kind: 'exponential', mean: 240 }],
    ['30..60 s', { kind: 'uniform', min: 30, max: 60 }],
    ['30 s..1 min', { kind: 'uniform', min: 30, max: 60 }],
    ['uniform 30 .. 60 s', { kind: 'uniform', min: 30, max: 60 }],
    ['25..40..80 s', { kind: 'triangular', min: 25, mode: 40, max: 80 }],
    ['pert 25..40..80 s', { kind: 'pert', min: 25, mode: 40, max: 80 }],
    ['constant 45 s', { kind: 'constant', value: 45 }],
    ['0.5..1.25 s', { kind: 'uniform', min: 0.5, max: 1.25 }],
  ])('%s', (text, value) => {
    expect(parsePhrase(text)).toEqual({ value, fault: null })
  })

  test.each([
    ['normal 40 s ± 6 s', 'E_NORMAL', 0],
    ['lognoraml 40 s', 'E_PHRASE_KIND', 0],
    ['weibull 40 s', 'E_PHRASE_KIND', 0],
    ['soon', 'E_PHRASE', 0],
    ['exponential', 'E_PHRASE', 0],
    ['lognormal 40 s', 'E_SPREAD_MISSING', 0],
    ['exponential 40 s ± 5 %', 'E_SPREAD_TOO_MUCH', 16],
    ['40 s ± 5 s', 'E_SPREAD', 7],
    ['40 s ±', 'E_SPREAD', 6],
    ['40 s ± 5,5 %', 'E_DECIMAL_COMMA', 7],
    ['40 s ± -5 %', 'E_NEGATIVE', 7],
    ['40 s ± 5 % or so', 'E_LEFTOVER', 10],
    ['40 sec ± 5 %', 'E_UNIT_UNKNOWN', 3],
    ['60..30 s', 'E_ORDER', 0],
    ['60..30..90 s', 'E_ORDER', 0],
    ['1..2..3..4 s', 'E_RANGE_PARTS', 0],
    ['uniform 1..2..3 s', 'E_RANGE_PARTS', 8],
    ['triangular 1..2 s', 'E_RANGE_PARTS', 11],
    ['30..60', 'E_UNIT_MISSING', 4],
    ['30..60 m', 'E_UNIT_OTHER', 7],
    ['30.. s', 'E_PHRASE', 5],
    ['0 s ± 5 %', 'E_ZERO', 0],
    ['exponential 0 s', 'E_ZERO', 12],
    ['30..60 s ± 5 %', 'E_LEFTOVER', 8],
    ['', 'E_PHRASE', 0],
  ])('%j is refused at its column', (text, code, start) => {
    const { fault } = parsePhrase(text)
    expect([fault?.sentence.code, fault?.start]).toEqual([code, start])
  })

  test('a plain normal gets the lognormal of the same mean and spread', () => {
    expect(parsePhrase('normal 40 s ± 6 s').fault?.sentence.fix).toContain('"lognormal 40 s ± 15 %"')
    expect(parsePhrase('normal 40 s ± 20 %').fault?.sentence.fix).toContain('"lognormal 40 s ± 20 %"')
    expect(parsePhrase('normal about 40 s').fault?.sentence.fix).toContain('"lognormal 45 s ± 15 %"')
  })
})
