import { graphLine, loopLine } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { runAlternatives } from './runAlternatives.ts'

// L pushes to W, W pulls nothing and pushes on; one place between; three people who stay
const { spec: handLine } = graphLine({
  zones: ['A', 'B', 'C', 'D'],
  zoneLength: 1,
  drive: { speed: 0.2 },
  paths: [
    { from: 'A', to: 'B', push: 'L', move: 5 },
    { from: 'B', to: 'C', pull: 'W', move: 8 },
    { from: 'C', to: 'D', push: 'W', move: 7 },
    'D > A',
  ],
  carriers: { count: 2, length: 0.8 },
  stations: { L: { zone: 'A', load: 20 }, W: { zone: 'C', work: 30 }, U: { zone: 'D', unload: 10 } },
  warmup: 600,
  end: 7800,
})
const options = { seed: '1', workers: 0 }

test('people of a line by hand push and pull each carrier once at each path, and so do their seconds', async () => {
  const lines = ['now', 'same'].map((name) => ({ name, line: handLine, plan: null }))
  const { comparison, people, partial } = await runAlternatives(lines, { replications: 4 }, options)
  expect(partial).toBe(false)
  expect(comparison.lines[0]!.units).toEqual(comparison.lines[1]!.units)
  expect(people.map(({ name }) => name)).toEqual(['now', 'same'])
  const [now] = people
  const made = comparison.lines[0]!.units.reduce((sum, one) => sum + one, 0) / 4
  const by = Object.fromEntries(now!.handlings.map(({ operator, count }) => [operator, count]))
  // W pulls and pushes each product, L pushes it
  expect(Math.abs(by.W! - 2 * made)).toBeLessThan(8)
  expect(Math.abs(by.L! - made)).toBeLessThan(6)
  expect(now!.handlings.find(({ operator }) => operator === 'L')!.seconds / by.L!).toBeCloseTo(5, 1)
  expect(now!.walks).toEqual([])
})

describe('walks', () => {
  // one operator for two stations 5 s apart, constant times: after each duty he walks
  const { spec } = loopLine({
    zones: 4,
    zoneLength: 1,
    drive: { speed: 0.25 },
    carriers: { count: 1, length: 0.8 },
    stations: { L: { zone: 'Z01', load: 10 }, U: { zone: 'Z03', unload: 10 } },
    operators: { Ann: { stations: ['L', 'U'] } },
    walks: [{ between: ['L', 'U'], lasts: 5 }],
    warmup: 600,
    end: 4200,
  })
  test('each product takes a walk there and one back', async () => {
    const { comparison, people } = await runAlternatives(
      ['a', 'b'].map((name) => ({ name, line: spec, plan: null })),
      { replications: 2 },
      options,
    )
    const made = comparison.lines[0]!.units[0]!
    const [{ count, seconds }] = people[0]!.walks as unknown as [{ count: number; seconds: number }]
    expect(Math.abs(count - 2 * made)).toBeLessThanOrEqual(2)
    expect(seconds / count).toBeCloseTo(5, 1)
  })
})

test('where it is asked for, carriers that each station lets go are counted: one for each product, at a line without pushes too', async () => {
  const { spec } = loopLine({
    zones: 4,
    zoneLength: 1,
    drive: { speed: 0.25 },
    carriers: { count: 2, length: 0.8 },
    stations: { L: { zone: 'Z01', load: 10 }, U: { zone: 'Z03', unload: 12 } },
    warmup: 600,
    end: 4200,
  })
  const lines = ['a', 'b'].map((name) => ({ name, line: spec, plan: null }))
  const { comparison, people } = await runAlternatives(lines, { replications: 2, cycles: true }, options)
  const made = comparison.lines[0]!.units[0]!
  expect(people[0]!.cycles).toHaveLength(2)
  for (const count of people[0]!.cycles) expect(Math.abs(count - made)).toBeLessThanOrEqual(1)
  const unasked = await runAlternatives(lines, { replications: 2 }, options)
  expect(unasked.people[0]!.cycles).toEqual([])
})
