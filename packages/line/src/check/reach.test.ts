import { describe, expect, test } from 'vitest'
import { graphLine, loopLine } from '../builder/sketchedLine.ts'
import { checkReached, productZones } from './reach.ts'

const COMMON = { zoneLength: 2, drive: { speed: 1 }, carriers: { count: 1, length: 1 }, end: 60 }
const ring = loopLine({
  ...COMMON,
  zones: 6,
  stations: { in: { zone: 'Z02', load: 10 }, fit: { zone: 'Z03', work: 10 }, out: { zone: 'Z05', unload: 10 } },
})

describe('products', () => {
  test('are from load to unload, both included', () => expect([...productZones(ring.spec)]).toEqual([1, 2, 3, 4]))

  test('do not come to a station behind the unload', () => {
    const { warnings } = ring.with({ stations: { fit: { zone: 'Z06' } } })
    expect(warnings.map(({ code, path }) => `${code} ${path}`)).toEqual(['W_STATION_UNREACHED stations.fit.zone'])
    expect(warnings[0]!.message).toContain('behind the unload station "out" and before the load station "in"')
  })
})

describe('a second load station', () => {
  const stations = { in: { zone: 'Z02', load: 10 }, out: { zone: 'Z05', unload: 10 } }
  const codes = (second: object, more = {}): string[] =>
    loopLine({ ...COMMON, zones: 6, stations: { ...stations, fit: { zone: 'Z03', ...second }, ...more } }).warnings.map(
      ({ code, path }) => `${code} ${path}`,
    )

  test('behind the first has nothing to load', () => expect(codes({ load: 10 })).toEqual(['W_LOAD_UNREACHED stations.fit.zone']))
  test('that takes off in the same stay has', () => expect(codes({ load: 10, unload: 5 })).toEqual([]))
  test('behind an unload station has', () => expect(codes({ load: 10, zone: 'Z06' }, { last: { zone: 'Z01', unload: 5 } })).toEqual([]))
})

test('a spur that can only lead back is never entered', () => {
  const spur = { transfer: { lift: 1, lower: 1, enterOnlyIfExitClear: true } }
  const { spec } = graphLine({ ...COMMON, zones: [{}, { divert: 'free' }, spur], paths: ['Z01 > Z02 > Z01', 'Z02 > Z03 > Z02'] })
  expect(checkReached(spec).map((finding) => finding.say([]).code)).toEqual(['W_SPUR_CLOSED'])
})

describe('a second way out', () => {
  // MODEL.md §3: those with conditions before those without, then the lower path index where divert is `first`
  const codes = (zone: object, ...ways: (string | object)[]): string[] => {
    const { spec } = graphLine({ ...COMMON, zones: [zone, {}, {}], paths: ['Z01 > Z02 > Z01', 'Z03 > Z01', ...ways] as string[] })
    return checkReached(spec).map((finding) => finding.say([]).code)
  }
  const never = ['W_WAY_NEVER_TAKEN']

  test('that takes whom the first takes is never taken', () => expect(codes({}, 'Z01 > Z03')).toEqual(never))
  test('is taken in turn, or where it is free', () => {
    expect(codes({ divert: 'alternate' }, 'Z01 > Z03')).toEqual([])
    expect(codes({ divert: 'free' }, 'Z01 > Z03')).toEqual([])
  })
  test('with conditions is taken; one more with the same is not', () => {
    const empty = { from: 'Z01', to: 'Z03', takes: { load: 'empty' } }
    expect(codes({}, empty)).toEqual([])
    expect(codes({}, empty, { ...empty, to: 'Z02' })).toEqual(never)
    expect(codes({}, empty, { ...empty, to: 'Z02', takes: { load: 'loaded' } })).toEqual([])
    // rejected products go before: theirs is a rank of its own
    expect(codes({}, { ...empty, takes: { load: 'loaded' } }, { ...empty, to: 'Z02', takes: { load: 'loaded', rejected: true } })).toEqual(
      [],
    )
  })
})
