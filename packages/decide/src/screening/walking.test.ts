import { graphLine } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { NOTHING_GIVEN } from './screening.ts'
import { measuredWalks, metresOf, walkFindings, walksOn } from './walking.ts'

const { spec } = graphLine({
  zones: ['A', 'B', 'C'],
  zoneLength: 1,
  drive: { speed: 0.2 },
  paths: ['A > B', 'B > C', 'C > A'],
  carriers: { count: 2, length: 0.8 },
  products: { variants: { small: 3, large: 1 } },
  stations: {
    L: { zone: 'A', load: { put: 20 } },
    W: { zone: 'B', work: { wire: 30, seal: { small: null, large: 12 } } },
    X: { zone: 'C', work: { polish: { small: null, large: 9 } }, unload: { take: 5 } },
  },
  operators: { Ann: { stations: ['L', 'W'] }, Bob: { stations: ['W'] } },
  warmup: 0,
  end: 3600,
})
const tape = (of: string, metres: number) => ({ of, metres, measured: 'tape' })
const by = (walks: Parameters<typeof measuredWalks>[1]) =>
  Object.fromEntries(measuredWalks(spec, walks, [400, 400, 400]).map((one) => [one.person, metresOf(one)]))

describe('a way each unit becomes metres of a person', () => {
  test('of an operator, of a station whose own operator it is', () => {
    expect(by([tape('put', 2)])).toEqual({ Ann: 800 })
    expect(by([tape('take', 3)])).toEqual({ X: 1200 })
  })
  test('a task of some variants counts for their share, a station for all', () => {
    // 1 of 4 is large
    expect(by([tape('polish', 4)])).toEqual({ X: 400 })
    expect(by([tape('X', 4)])).toEqual({ X: 1600 })
  })
  test('where two may come, each walks half; an operator’s ways add up', () => {
    expect(by([tape('put', 2), tape('wire', 1), tape('seal', 8)])).toEqual({ Ann: 800 + 200 + 400, Bob: 200 + 400 })
    const [, bob] = measuredWalks(spec, [tape('put', 2), tape('seal', 8)], [400, 400, 400])
    expect(bob!.parts[0]!.known).toBe('tape; on 25 % of the units, by the mix; shared alike among 2')
  })
})

test('a way belongs to a line that has its task or station', () => {
  expect(walksOn(spec, [tape('wire', 1), tape('wirre', 1), tape('L', 1)]).map(({ of }) => of)).toEqual(['wire', 'L'])
})

test('metres are told, and judged only by a limit that somebody has read', () => {
  const walked = measuredWalks(spec, [tape('put', 20)], [400, 400, 400])
  expect(walkFindings(walked, NOTHING_GIVEN)[0]).toMatchObject({ value: 8000, word: 'not checked', guidance: null })
  const ownCopy = [{ limit: 'walk', value: 5000, source: 'rule of our plant' }] as const
  const [judged] = walkFindings(walked, { ...NOTHING_GIVEN, ownCopy })
  expect(judged).toMatchObject({ word: 'above guidance value', guidance: { evidence: 'your own copy' } })
  expect(judged!.assumptions).toEqual(['put: 20 m × 400 (tape)'])
})
