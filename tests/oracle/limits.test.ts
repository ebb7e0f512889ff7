/** What limits a line, against closed forms that are worked out by hand from given times; what is from a book says so. */
import { type Limit, lineLimits } from '@loopwright/line/bounds'
import { simulate } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'

/** Constant moves of 5 s at 12 m/min without ramps, clears of 4.5 s + 0.1 s; 10 h judged. */
const HEAD = `
format: 1
name: Line
question: What limits it?
warmup: 1 h
length: 10 h
drive: { speed: 12 m/min, reaction: 0 s }
carriers: { count: 6, length: 0.9 m }
`
const LOOP = `${HEAD}
loop: 16 zones of 1 m
stations:
  Load: { zone: Z01, load: { place: 20 s } }
  One: { zone: Z04, work: { one: 55 s } }
  Two: { zone: Z07, work: { two: 70 s } }
  Unload: { zone: Z12, unload: { take: 20 s } }
`
const GRAPH = `${HEAD.replace('length: 0.9 m }', 'length: 0.9 m, start: store }')}
zones:
  A: { length: 1 m }
  B: { length: 1 m, divert: free }
  C: { length: 1 m }
  D: { length: 1 m }
  E: { length: 1 m }
paths:
  - store > A > B > C > E > store
  - B > D > E
stations:
  Load: { zone: A, load: { place: 10 s } }
  Left: { zone: C, work: { fit: 100 s } }
  Right: { zone: D, work: { fit: 150 s } }
  Unload: { zone: E, unload: { take: 10 s } }
`
const HOURS = 36_000

function limits(text: string): readonly Limit[] {
  const { scenario, problems } = readScenario(text)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return lineLimits(scenario.line)
}
const named = (text: string, kind: Limit['kind'], name: string): Limit => {
  const found = limits(text).find((limit) => limit.kind === kind && limit.name === name)
  if (found === undefined) throw new Error(`no ${kind} ${name}`)
  return found
}

describe('stations', () => {
  test('constant times without ramps: move 5, work 70, clear 4.5, as in the law', () => {
    const two = named(LOOP, 'station', 'Two')
    expect(two.secondsPerUnit).toBeCloseTo(79.5, 5)
    expect(two.unitsPerWindow).toBeCloseTo(HOURS / 79.5, 3)
    expect(two).toMatchObject({ atMost: true, reasons: [], parts: { releaseSeconds: 0, stoppedSeconds: 0 } })
    expect(limits(LOOP)[0]).toMatchObject({ name: 'Two' })
  })

  test('stops on the operating clock: a station alone does 1/(t·(1 + repair/time to failure))', () => {
    // operation-dependent failures: Dallery & Gershwin, Manufacturing flow line systems (1992), isolated production rate; from memory
    const often = `${LOOP}\nstops:\n  jam: { at: Two, after: exponential 45 s, lasts: exponential 3 min }\n`
    const two = named(often, 'station', 'Two')
    expect(two.secondsPerUnit).toBeCloseTo(79.5 + 70 * 4, 5)
    expect(two.parts.stoppedSeconds).toBeCloseTo(280, 5)
    expect(two.atMost).toBe(true)
    expect(two.unitsPerWindow).toBeCloseTo(HOURS / 359.5, 3)
  })

  test('stops by the clock leave their availability: an estimate; what is proven leaves room for work that goes on meanwhile', () => {
    const two = named(
      `${LOOP}\nstops:\n  power: { at: line, clock: calendar, after: exponential 1 h, lasts: exponential 1 h }\n`,
      'station',
      'Two',
    )
    expect(two.unitsPerWindow).toBeCloseTo((HOURS / 79.5) * 0.5, 3)
    expect(two).toMatchObject({ atMost: false, reasons: ['stops that come by the clock'] })
    expect(two.atMostPerWindow).toBeCloseTo((HOURS / 79.5) * (1 - (3600 - 140) / 7200), 3)
  })

  test('two places beside each other share the flow: their rates add up', () => {
    const both = named(GRAPH, 'station', 'Left and Right')
    const [left, right] = [1 / (100 + 9.5), 1 / (150 + 9.5)]
    expect(both.unitsPerWindow).toBeCloseTo(HOURS * (left + right), 2)
    expect(both.atMost).toBe(true)
  })

  test('a load station behind another loads nothing, and shares nothing: the first loads every carrier', () => {
    const behind = LOOP.replace('  One: { zone: Z04, work: { one: 55 s } }', '  Later: { zone: Z04, load: { putOn: 20 s } }').replace(
      '20 s }',
      '90 s }',
    )
    expect(limits(behind).map(({ name }) => name)).not.toContain('Load and Later')
    expect(limits(behind)[0]).toMatchObject({ name: 'Load', atMost: true })
    expect(limits(behind)[0]!.secondsPerUnit).toBeCloseTo(90 + 9.5, 5)
    const { scenario } = readScenario(behind)
    // a window begins anywhere in the cycle: one more or less
    const { output } = simulate(scenario!.line, { seed: '1', replication: 0 })
    expect(Math.abs(output - HOURS / 99.5)).toBeLessThan(1)
  })

  test('rework again and again: 1/(1 − p) visits on average, the geometric law', () => {
    const again = `${HEAD}
loop: 8 zones of 1 m
stations:
  Load: { zone: Z01, load: { place: 10 s } }
  Test: { zone: Z04, work: { test: 40 s } }
  Unload: { zone: Z06, unload: { take: 10 s } }
inspections: { test: 20 % }
rework: { test: again }
`
    const found = named(again, 'station', 'Test')
    expect(found.parts.workSeconds).toBeCloseTo(40 / 0.8, 6)
    expect(found.secondsPerUnit).toBeCloseTo(49.5 / 0.8, 5)
  })

  test('rejected products that are taken off are no output: every unit needs 1/(1 − p) loads', () => {
    const off = `${HEAD}
loop: 8 zones of 1 m
stations:
  Load: { zone: Z01, load: { place: 10 s } }
  Test: { zone: Z04, work: { test: 40 s } }
  Unload: { zone: Z06, unload: { take: 10 s }, accepts: all }
inspections: { test: 20 % }
supply: { every: 100 s }
`
    expect(named(off, 'arrivals', 'arrivals')).toMatchObject({ atMost: true })
    expect(named(off, 'arrivals', 'arrivals').unitsPerWindow).toBeCloseTo(360 * 0.8, 6)
    expect(named(off, 'station', 'Test').secondsPerUnit).toBeCloseTo(49.5 / 0.8, 5)
  })
})

describe('operators', () => {
  test('one for two stations: the sum of the work, 125 s', () => {
    const one = named(`${LOOP}\noperators:\n  Ann: { stations: [One, Two] }\n`, 'operator', 'Ann')
    expect(one).toMatchObject({ atMost: true, secondsPerUnit: 125, parts: { workSeconds: 125, walkingSeconds: 0 } })
    expect(one.unitsPerWindow).toBeCloseTo(288, 9)
  })

  test('walking in turn comes on top, as an estimate; what is proven is without it', () => {
    const walks = 'walks:\n  - { between: [One, Two], lasts: 5 s }\n'
    const one = named(`${LOOP}\noperators:\n  Ann: { stations: [One, Two] }\n${walks}`, 'operator', 'Ann')
    expect(one).toMatchObject({ atMost: false, secondsPerUnit: 135, reasons: ['walking from station to station in turn'] })
    expect(one.atMostPerWindow).toBeCloseTo(288, 9)
  })

  test('several: what only some of them can do must fit into their time (Hall 1935, the marriage bound; from memory)', () => {
    // Bob alone can do Load, 20 s; Ann and Bob share One and Two, 125 s: together 145 s of two people, and Bob alone 20 s
    const two = `${LOOP}\noperators:\n  Ann: { stations: [One, Two] }\n  Bob: { stations: [One, Two, Load] }\n`
    const both = named(two, 'operator', 'Ann and Bob')
    expect(both).toMatchObject({ atMost: true, secondsPerUnit: 145, availableSeconds: 2 * HOURS })
    expect(limits(two).some(({ name }) => name === 'Ann')).toBe(false)
  })

  test('a station that needs both keeps both', () => {
    const text = `${LOOP.replace('One: { zone: Z04,', 'One: { zone: Z04, operatorsNeeded: 2,')}\noperators:\n  Ann: { stations: [One, Two] }\n  Bob: { stations: [One] }\n`
    expect(named(text, 'operator', 'Ann')).toMatchObject({ secondsPerUnit: 125 })
  })
})

describe('goods, crews and carriers', () => {
  test('a receiver takes one a cycle', () => {
    const text = LOOP.replace('unload: { take: 20 s }', 'unload: { take: 20 s }, receiver: { cycle: 120 s, queue: 2 }')
    expect(limits(text)[0]).toMatchObject({ kind: 'receiver', name: 'receiver at Unload', atMost: true, secondsPerUnit: 120 })
  })

  test('a list of products makes no more than it holds', () => {
    const text = `${LOOP}\nproducts: { variants: { a: 1, b: 1 }, mix: { list: [a, b, a] } }\n`
    const { scenario } = readScenario(text)
    const line = scenario?.line ?? readScenario(LOOP).scenario!.line
    const listed = lineLimits({ ...line, mix: { kind: 'list', sequence: [0, 0, 0] } })[0]!
    expect(listed).toMatchObject({ kind: 'list', atMost: true })
    expect(listed.unitsPerWindow).toBeCloseTo(3, 9)
  })

  test('one repair crew for failures that would keep three busy', () => {
    const stops = ['One', 'Two'].map((at) => `  jam${at}: { at: ${at}, after: exponential 45 s, lasts: exponential 3 min }`).join('\n')
    const crew = named(`${LOOP}\nrepairCrews: 1\nstops:\n${stops}\n`, 'repair crew', 'the repair crew')
    expect(crew.secondsPerUnit).toBeCloseTo((55 + 70) * 4, 6)
    expect(crew).toMatchObject({ atMost: true })
  })

  test('an open line: carriers over their quickest round', () => {
    const open = named(GRAPH, 'carriers', '6 carriers')
    // by Left: store to A 5, 10 s, A to B to C to E three moves, 100 s, 10 s, E to the store
    expect(open.secondsPerUnit).toBeCloseTo(10 + 100 + 10 + 5 * 5, 4)
    expect(open).toMatchObject({ atMost: true })
  })

  test('nothing limits where nothing is ever taken off', () => {
    expect(limits(LOOP.replace('  Unload: { zone: Z12, unload: { take: 20 s } }\n', ''))).toEqual([])
  })
})
