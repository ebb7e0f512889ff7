import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../read.ts'

const found = (...changes: [string, string][]): string[] =>
  readScenario(scenarioText(...changes)).problems.map(({ code, path }) => `${code} ${path}`)

describe('a list of products', () => {
  // an exchange at "Fit" takes more than its 40 s of work: 900 products last beyond 10 h
  const list = (count: number): [string, string] => [
    '',
    `products: { variants: [a], mix: { kind: list, sequence: [${Array(count).fill('a').join(', ')}] } }`,
  ]
  test('that ends before the window is told', () => {
    expect(found(list(100))).toEqual(['W_LIST_ENDS products.mix.sequence'])
    expect(found(list(900))).toEqual([])
  })
})

describe('a stop', () => {
  const stop = (lasts: string, at = 'Fit'): [string, string] => [
    '',
    `stops: { jam: { at: ${at}, after: exponential 3 min, lasts: ${lasts} } }`,
  ]
  test('longer than the time between two is told once for all its places', () => {
    expect(found(stop('181 s'))).toEqual(['W_STOP_LONG stops.jam.lasts'])
    expect(found(stop('181 s', 'every station'))).toEqual(['W_STOP_LONG stops.jam.lasts'])
    expect(found(stop('179 s'))).toEqual([])
  })
  const often = (after: string, lasts = after): string[] =>
    found(['', `stops: { jam: { at: every station, after: ${after}, lasts: ${lasts} } }`])
  test('that comes a million times in a run is told once, at its time', () => {
    expect(often('exponential 0.0001 ms')).toEqual(['W_TOO_OFTEN stops.jam.after'])
    expect(often('exponential 1e-9 min')).toEqual(['W_TOO_OFTEN stops.jam.after'])
    // both together come every 40 ms, in 8 h and more 720 000 times and more
    expect(often('exponential 20 ms')).toEqual([])
  })
  test('and so is a supply', () => {
    expect(found(['', 'supply: { every: exponential 0.1 ms }'])).toEqual(['W_TOO_OFTEN supply.every'])
    expect(found(['', 'supply: { every: exponential 1 s }'])).toEqual([])
  })
})

describe('corners', () => {
  const corners = (zones: string, turn = 'right'): string => `{ zones: [${zones}], turn: ${turn}, lift: 1 s, lower: 1 s }`
  // the sides between the corners are 2, 3, 2 and 3 m
  test('of a rectangle close, whichever way it goes round, and of an L', () => {
    expect(found(['', `corners: ${corners('Z01, Z03, Z06, Z08')}`])).toEqual([])
    expect(found(['', `corners: ${corners('Z01, Z03, Z06, Z08', 'left')}`])).toEqual([])
    const twelve: [string, string] = ['10 zones of 1 m', '12 zones of 1 m']
    expect(found(twelve, ['', `corners: [${corners('Z01, Z03, Z05, Z08, Z09')}, ${corners('Z06', 'left')}]`])).toEqual([])
  })
  test('too few, or sides of two lengths, do not', () => {
    expect(found(['', `corners: ${corners('Z01, Z06')}`])).toEqual(['W_CORNERS_OPEN corners'])
    expect(found(['', `corners: ${corners('Z01, Z03, Z04, Z05')}`])).toEqual(['W_CORNERS_OPEN corners'])
  })
})

describe('rework only', () => {
  const mend = (times: string, accepts = ''): [string, string][] => [
    ['', 'products: { variants: { a: 50 %, b: 50 % } }'],
    ['  Unload: {', `  Mend: { zone: Z06, work: { mend: { byVariant: { ${times} } } } }\n  Unload: { ${accepts}`],
    ['', 'inspections: { fit: 3 % }'],
    ['', 'rework: { mend: only }'],
  ]
  test('without a time for a variant that may be rejected is told, unless somebody takes rejected products off', () => {
    expect(found(...mend('a: 60 s, b: none'))).toEqual(['W_REWORK_WITHOUT_TIME rework.mend'])
    expect(found(...mend('a: 60 s, b: 60 s'))).toEqual([])
    expect(found(...mend('a: 60 s, b: none', 'accepts: all,'))).toEqual([])
    expect(found(...mend('a: 60 s, b: none').slice(0, 2), ['', 'rework: { mend: only }'])).toEqual([])
  })
})
