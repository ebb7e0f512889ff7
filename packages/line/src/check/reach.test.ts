import { describe, expect, test } from 'vitest'
import { graphLine, loopLine } from '../builder/sketchedLine.ts'
import { checkFlow, productZones } from './reach.ts'

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
  const { spec } = graphLine({ ...COMMON, zones: [{}, {}, spur], paths: ['Z01 > Z02 > Z01', 'Z02 > Z03 > Z02'] })
  expect(checkFlow(spec).map((finding) => finding.say([]).code)).toEqual(['W_SPUR_CLOSED'])
})
