import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../tests/helpers/scenarioText.ts'
import { readScenario } from './read.ts'

const SCENARIOS = new URL('../../../scenarios/', import.meta.url)
const demo = readFileSync(new URL('outdoor-unit-base-line.yaml', SCENARIOS), 'utf8')

test('a scenario is given only where nothing is wrong; warnings do not count', () => {
  expect(readScenario(scenarioText())).toMatchObject({ problems: [], scenario: { name: 'Ten zones' }, notes: { storageZones: 10 } })
  expect(readScenario(scenarioText(['count: 4', 'count: 10']))).toMatchObject({ scenario: null, notes: null })
  const warned = readScenario(
    scenarioText(['format: 1\nquestion: What does this loop make?\n', 'question: What does this loop make?\nformat: 1\n']),
  )
  expect(warned).toMatchObject({ problems: [{ code: 'W_FORMAT_FIRST', severity: 'warning' }], scenario: { name: 'Ten zones' } })
})

test('JSON is read like YAML', () => {
  const json = JSON.stringify(
    {
      format: 1,
      question: 'q',
      name: 'n',
      warmup: '1 h',
      length: '8 h',
      drive: { speed: '12 m/min' },
      carriers: { count: 2, length: '0.8 m' },
      loop: '5 zones of 1 m',
      stations: { L: { zone: 'Z01', load: {}, unload: {} } },
    },
    null,
    '\t',
  )
  expect(readScenario(json).problems).toEqual([])
})

test('every code says by its first letter what it is', () => {
  const text = scenarioText(['count: 4', 'count: 10'], ['load: {', 'work: {'])
  for (const problem of readScenario(text).problems) expect(problem.code[0]).toBe(problem.severity === 'error' ? 'E' : 'W')
})

describe('no text makes it throw', () => {
  test('any characters', () => {
    fc.assert(
      // halves of pairs too; the tool's own list of all characters takes a second to make
      fc.property(
        fc.string({ unit: fc.nat(0x10_ff_ff).map((code) => String.fromCodePoint(code)), maxLength: 300 }),
        (text) => readScenario(text).problems.length > 0,
      ),
      { numRuns: 300, seed: 4 },
    )
  })
  test('the demo with a piece cut out, doubled or replaced', { tags: 'long' }, () => {
    const pieces = fc.constantFrom(
      '',
      '{',
      ']',
      ': ',
      '- ',
      '\n',
      '"',
      '#',
      '~',
      '[]',
      '{}',
      '*a',
      '&a ',
      '<<: ',
      '1e999',
      '.nan',
      '-1 s',
      '40 %',
      'Z01',
      'none',
      '± ',
      '\t',
      '\u0000',
      '2026-01-01',
    )
    const place = fc.nat({ max: demo.length })
    const mutation = fc.tuple(place, fc.nat({ max: 40 }), pieces)
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) => {
        const text = mutations.reduce((one, [at, length, piece]) => one.slice(0, at) + piece + one.slice(at + length), demo)
        const { scenario, problems } = readScenario(text)
        const lines = text.split('\n')
        expect(problems.filter(({ line, column }) => column - 1 > lines[line - 1]!.length)).toEqual([])
        expect(scenario === null).toBe(problems.some((problem) => problem.severity === 'error'))
      }),
      { numRuns: 250, seed: 5 },
    )
  })
  test('a value of another type in the place of each value', { tags: 'long' }, () => {
    const lines = scenarioText().split('\n')
    for (const value of ['5', '[5]', '{ a: 5 }', '~', 'true', 'text', '.inf', '-0', '""', '"5 s"', '[[], {}]', '2026-01-01']) {
      for (let i = 0; i < lines.length; i++) {
        const key = /^(\s*[\w"]+:)/.exec(lines[i]!)?.[1]
        if (key === undefined) continue
        const text = [...lines.slice(0, i), `${key} ${value}`, ...lines.slice(i + 1)].join('\n')
        expect(() => readScenario(text)).not.toThrow()
      }
    }
  })
})

test('the scenarios that come with the product are read without a finding', () => {
  const names = readdirSync(SCENARIOS).filter((name) => name.endsWith('.yaml'))
  expect(names.length).toBeGreaterThanOrEqual(3)
  for (const name of names) {
    const text = readFileSync(new URL(name, SCENARIOS), 'utf8')
    expect([name, readScenario(text).problems]).toEqual([name, []])
    expect(text.startsWith('# ')).toBe(true)
    expect(text.split('\n')[0]).toContain('?')
    expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(70)
  }
})

describe('what is wrong in many zones', () => {
  const listed = (zone: (name: string) => string) => (count: number) =>
    scenarioText(['10 zones of 1 m', `[${Array.from({ length: count }, (_, k) => zone(`Z${String(k + 1).padStart(2, '0')}`)).join(', ')}]`])
  /** processor time, microseconds */
  const spent = (text: string): number => {
    const before = process.cpuUsage()
    readScenario(text)
    const { user, system } = process.cpuUsage(before)
    return user + system
  }
  /** How many times as long one text takes as another, by the least of both; what seems too much is tried again, for the machine may have been at something else. */
  const timesAsLong = (text: string, other: string, tooMuch: number): number => {
    let [one, less] = [Infinity, Infinity]
    for (let tries = 0; tries < 3 && !(one / less < tooMuch); tries++) {
      less = Math.min(less, spent(other), spent(other))
      one = Math.min(one, spent(text))
    }
    return one / less
  }

  test.each([
    ['a key that is not known', listed((name) => `{ name: ${name}, lenght: 1 m }`), 'E_UNKNOWN_KEY'],
    ['a unit that is not known', listed((name) => `{ name: ${name}, length: 1 furlong }`), 'E_UNIT'],
    ['a name that stands in all of them', listed(() => '{ name: Z01, length: 1 m }'), 'E_DUPLICATE_NAME'],
    ['a zone that is shorter than a carrier', listed((name) => `{ name: ${name}, length: 0.0${name.slice(1)} m }`), 'E_CARRIER_LONG'],
  ])('%s: the work grows as their number does, and not as its square', { tags: 'long' }, (_, textOf, code) => {
    // compiled code and a warm heap for both, too
    expect(readScenario(textOf(500)).problems.map((problem) => problem.code)).toContainEqual(expect.stringContaining(code))
    // eight times the zones take eight times the work; where each is set beside each, sixty-four times
    expect(timesAsLong(textOf(4000), textOf(500), 30)).toBeLessThan(30)
  })
})
