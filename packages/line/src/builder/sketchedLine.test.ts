import { describe, expect, test } from 'vitest'
import { simulate } from '../simulate.ts'
import { STORE } from '../spec.ts'
import { LineError } from './report.ts'
import { graphLine, loopLine, straightLine } from './sketchedLine.ts'

/** Ten zones, two stations, a stop. */
const ring = loopLine({
  zones: 10,
  zoneLength: 1.5,
  drive: { speed: 0.3, acceleration: 0.5, reaction: 0.1 },
  carriers: { count: 4, length: 1.2 },
  stations: {
    load: { zone: 'Z01', unload: 10, load: 20 },
    fit: { zone: 'Z06', work: { 'fit lid': { kind: 'lognormal', mean: 30, cv: 0.2 } } },
  },
  stops: { jam: { at: 'fit', after: { kind: 'exponential', mean: 1800 }, lasts: 60 } },
  end: 8 * 3600,
})

describe('what comes of a sketch', () => {
  test('is complete: every default stands in it', () => {
    expect(ring.spec.zones[0]).toEqual({
      name: 'Z01',
      lengthMetres: 1.5,
      sensorBeforeStopMetres: 0,
      release: 'single',
      transfer: null,
      divert: 'first',
      merge: { kind: 'waiting' },
    })
    expect(ring.spec.paths[9]).toEqual({
      from: 9,
      to: 0,
      distanceMetres: 1.5,
      speedMetresPerSecond: 0.3,
      accelerationMetresPerSecondSquared: 0.5,
      across: false,
      fromPosition: 'low',
      toPosition: 'low',
      moveSeconds: null,
      clearSeconds: null,
      takes: { variants: null, load: null, rejected: null, forStation: null },
      manual: null,
    })
    expect(ring.spec.carriers).toEqual({ count: 4, lengthMetres: 1.2, widthMetres: null, start: 'spread' })
    expect([ring.spec.reactionSeconds, ring.spec.staggerSeconds, ring.spec.repairCrews]).toEqual([0.1, 0.1, null])
    expect(ring.spec.tasks).toEqual(['unload load', 'load load', 'fit lid'])
    expect([ring.spec.variants, ring.spec.mix]).toEqual([['product'], { kind: 'random', shares: [1] }])
    expect(ring.spec.breakdowns[0]).toMatchObject({ name: 'jam', part: { kind: 'station', index: 1 }, clock: 'operating' })
    expect(ring.spec.sections).toEqual([{ name: 'line', zones: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] }])
    expect(ring.spec.window).toEqual({ warmupSeconds: 0, endSeconds: 28_800 })
    expect(ring.warnings).toEqual([])
  })

  test('runs', () => expect(simulate(ring.spec, { seed: '1', replication: 0, verify: true }).output).toBeGreaterThan(500))

  test('a straight line begins and ends in the store, where its carriers start', () => {
    const { spec } = straightLine({ zones: ['in', 'out'], zoneLength: 2, drive: { speed: 1 }, carriers: { count: 3, length: 1 }, end: 60 })
    expect(spec.paths.map(({ from, to }) => [from, to])).toEqual([
      [STORE, 0],
      [0, 1],
      [1, STORE],
    ])
    expect(spec.carriers.start).toBe('store')
  })

  test('a graph has the paths that it names, and no others; a loop may have zones beside it', () => {
    const paths = ({ spec }: { spec: typeof ring.spec }) => spec.paths.map(({ from, to }) => `${from}>${to}`).join(' ')
    const common = { zoneLength: 2, drive: { speed: 1 }, carriers: { count: 1, length: 1 }, end: 60 }
    expect(paths(graphLine({ ...common, zones: 3, paths: ['Z01 > Z02 > Z01', 'Z02 > Z03 > Z01'] }))).toBe('0>1 1>0 1>2 2>0')
    expect(paths(loopLine({ ...common, zones: 3, beside: ['spur'], paths: ['Z02 > spur > Z03'] }))).toBe('0>1 1>2 2>0 1>3 3>2')
  })

  test('a transfer of a loop is left high, and turns the carrier for the paths behind it', () => {
    const transfer = { lift: 2, lower: 1.5 }
    const { spec } = loopLine({
      zones: [{}, { transfer }, {}, { transfer }],
      zoneLength: 2,
      drive: { speed: 1, sensorBeforeStop: 0.5, release: 'train' },
      carriers: { count: 1, length: 1, width: 1.5 },
      end: 60,
    })
    expect(spec.paths.map(({ fromPosition, toPosition, across }) => [fromPosition, toPosition, across])).toEqual([
      ['low', 'low', false],
      ['high', 'low', true],
      ['low', 'low', true],
      ['high', 'low', false],
    ])
    expect(spec.zones.map(({ sensorBeforeStopMetres: sensor, release }) => [sensor, release])).toEqual([
      [0.5, 'train'],
      [0, 'single'],
      [0.5, 'train'],
      [0, 'single'],
    ])
  })
})

describe('a change is one expression, and leaves the line as it was', () => {
  test('the number of carriers alone', () => {
    expect(ring.with({ carriers: 8 }).spec).toEqual({ ...ring.spec, carriers: { ...ring.spec.carriers, count: 8 } })
    expect(ring.spec.carriers.count).toBe(4)
  })

  test('a station moved', () => {
    const [load, fit] = ring.spec.stations
    expect(ring.with({ stations: { fit: { zone: 'Z07' } } }).spec).toEqual({ ...ring.spec, stations: [load, { ...fit, zone: 6 }] })
  })

  test('a station taken out, another put in', () => {
    const names = ring
      .with({ stops: { jam: null }, stations: { fit: null, glue: { zone: 'Z04', work: 12 } } })
      .spec.stations.map(({ name }) => name)
    expect(names).toEqual(['load', 'glue'])
  })

  test('a zone put in: all others keep their names, and stations their zones', () => {
    const { spec } = ring.with({ putIn: { after: 'Z05' } }).with({ putIn: { after: 'Z05a', zones: 2, length: 2 } })
    expect(spec.zones.map(({ name }) => name).slice(3, 9)).toEqual(['Z04', 'Z05', 'Z05a', 'Z05b', 'Z05c', 'Z06'])
    expect(spec.stations.map(({ zone }) => spec.zones[zone]!.name)).toEqual(['Z01', 'Z06'])
    expect(spec.zones.map(({ lengthMetres }) => lengthMetres).slice(4, 9)).toEqual([1.5, 1.5, 2, 2, 1.5])
  })
})

describe('what is wrong', () => {
  const wrong = (run: () => unknown): string[] => {
    try {
      run()
    } catch (error) {
      if (error instanceof LineError) return error.problems.map(({ code, path }) => `${code} ${path}`)
      throw error
    }
    return []
  }

  test('is told all at once, with places and remedies', () => {
    const build = () => ring.with({ carriers: 0, stations: { fit: { zone: 'Z-O7' } }, drive: { speed: -1 } })
    expect(wrong(build)).toEqual(['E_UNKNOWN_ZONE stations.fit.zone', 'E_NEGATIVE drive.speed', 'E_TOO_SMALL carriers.count'])
    expect(build).toThrow('stations.fit.zone: there is no zone called "Z-O7"; did you mean "Z07"?')
  })
})

test('a zone by its number is the one that was written there, whatever is put in or taken out', () => {
  const line = loopLine({
    zones: 6,
    zoneLength: 1.5,
    beside: ['R1'],
    paths: ['Z05 > R1 > Z06', { from: 3, speed: 0.2 }],
    drive: { speed: 0.3 },
    carriers: { count: 2, length: 1.2, start: [0, 6] },
    stations: { S1: { zone: 2, work: 20 }, S2: { zone: 4, load: 5, unload: 5 } },
    end: 3600,
  })
  const placed = ({ spec }: typeof line) => ({
    stations: spec.stations.map(({ zone }) => spec.zones[zone]!.name),
    slow: spec.paths.filter(({ speedMetresPerSecond }) => speedMetresPerSecond === 0.2).map(({ from }) => spec.zones[from]!.name),
    start: (spec.carriers.start as readonly number[]).map((zone) => spec.zones[zone]!.name),
  })
  const before = placed(line)
  expect(before).toEqual({ stations: ['Z03', 'Z05'], slow: ['Z04'], start: ['Z01', 'R1'] })
  expect(placed(line.with({ putIn: { after: 'Z01', zones: 2 } }))).toEqual(before)
  expect(placed(line.with({ takeOut: ['Z02'] }))).toEqual(before)
  expect(() => line.with({ takeOut: ['Z03'] })).toThrow('Z03')
})

test('of an unknown part only that is told, not what would follow from another in its place', () => {
  const wrong = (sketch: object): string[] => {
    try {
      loopLine({ zones: 4, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 1, length: 1.2 }, end: 60, ...sketch })
      return []
    } catch (error) {
      return (error as LineError).problems.map(({ code }) => code)
    }
  }
  expect(wrong({ stations: { A: { zone: 'Z01', work: 1 }, B: { zone: 'X', work: 1 } } })).toEqual(['E_UNKNOWN_ZONE'])
  expect(wrong({ sections: { a: ['Z01', 'X'], b: ['Y'] } })).toEqual(['E_UNKNOWN_ZONE', 'E_UNKNOWN_ZONE'])
  expect(wrong({ paths: ['Z01 > X'] })).toEqual(['E_UNKNOWN_ZONE'])
  expect(wrong({ stations: { A: { zone: 'Z01', unload: 1, load: 1 } }, inspections: { look: 0.1 } })).toEqual(['E_UNKNOWN_TASK'])
  expect(wrong({ stops: { jam: { at: [], after: 60, lasts: 5 } } })).toEqual(['E_LIST_EMPTY'])
})
