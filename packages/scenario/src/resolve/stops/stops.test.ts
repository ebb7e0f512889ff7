import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(stop: string, ...changes: [string, string][]) {
  const { scenario, problems, notes } = readScenario(scenarioText(...changes, ['', `stops: { fault: ${stop} }`]))
  return {
    breakdowns: scenario?.line.breakdowns ?? [],
    shortStops: notes?.shortStops ?? [],
    codes: problems.map((problem) => problem.code),
  }
}

test('one source: name, part, clock, both times', () => {
  expect(read('{ at: Fit, after: exponential 90 min, lasts: lognormal 5 min ± 65.83 % }').breakdowns).toEqual([
    {
      name: 'fault',
      part: { kind: 'station', index: 1 },
      clock: 'operating',
      timeToFailureSeconds: { kind: 'exponential', mean: 5400 },
      repairSeconds: { kind: 'lognormal', mean: 300, cv: 0.6583 },
    },
  ])
})

describe('a chance per cycle becomes a time to failure on the operating clock', () => {
  const stop = '{ at: every station, chance: 1.5 per 100 cycles, lasts: exponential 25 s }'

  test('mean working time over the chance, a source for each station, named by it', () => {
    const { breakdowns, shortStops } = read(stop)
    expect(breakdowns.map((one) => [one.name, one.timeToFailureSeconds])).toEqual([
      ['fault Load', { kind: 'exponential', mean: 2000 }],
      ['fault Fit', { kind: 'exponential', mean: 2666.66666667 }],
      ['fault Unload', { kind: 'exponential', mean: 1333.33333333 }],
    ])
    expect(shortStops[1]).toEqual({
      name: 'fault Fit',
      station: 'Fit',
      chancePerCycle: 0.015,
      meanWorkSeconds: 40,
      meanTimeToFailureSeconds: 2666.66666667,
    })
  })
  test('names do not depend on the place of a station', () => {
    const swapped = read(stop, [
      'Load: { zone: Z01, load: { place: 30 s ± 10 % } }',
      'First: { zone: Z02, work: { first: 1 s } }\n  Load: { zone: Z01, load: { place: 30 s ± 10 % } }',
    ])
    expect(swapped.breakdowns.map((one) => one.name)).toEqual(['fault First', 'fault Load', 'fault Fit', 'fault Unload'])
  })
  test('the mean is over the variants that have work there, by how often they are made', () => {
    const products: [string, string] = ['', 'products: { variants: { a: 60 %, b: 20 %, c: 20 % } }']
    const at = stop.replace('every station', 'Fit')
    expect(read(at, ['40 s ± 10 %', '{ byVariant: { a: 30 s, b: 50 s, c: none } }'], products).shortStops[0]?.meanWorkSeconds).toBe(35)
    const pattern: [string, string] = ['', 'products: { variants: [a, b], mix: { kind: pattern, sequence: [a, b, b] } }']
    expect(read(at, ['40 s ± 10 %', '{ byVariant: { a: 30 s, b: 60 s } }'], pattern).shortStops[0]?.meanWorkSeconds).toBe(50)
  })
  test.each([
    ['1.5 per 100 cycles', 0.015],
    ['1 per 66 cycles', 1 / 66],
    ['0.02 per cycle', 0.02],
    ['2 %', 0.02],
  ])('%s', (chance, expected) => {
    expect(read(`{ at: Fit, chance: ${chance}, lasts: 25 s }`).shortStops[0]?.chancePerCycle).toBe(expected)
  })
  test.each([
    ['often', 'E_RATE'],
    ['1.5', 'E_TYPE'],
    ['1.5 per hour', 'E_RATE'],
    ['1 per 0 cycles', 'E_RATE'],
    ['0 per 100 cycles', 'E_ZERO'],
    ['-1 per 100 cycles', 'E_NEGATIVE'],
    ['200 per 100 cycles', 'E_SHARE_BEYOND'],
    ['1,5 per 100 cycles', 'E_DECIMAL_COMMA'],
  ])('%s is refused', (chance, code) => {
    expect(read(`{ at: Fit, chance: "${chance}", lasts: 25 s }`.replace('"1.5"', '1.5')).codes).toEqual([code])
  })
})
