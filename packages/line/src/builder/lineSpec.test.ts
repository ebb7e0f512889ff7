/** What a sketch can get wrong, by the code of its sentence; the words themselves are those of a scenario file (`tests/linesFromCode.test.ts`). */
import { expect, test } from 'vitest'
import { type LineChange, withChange } from './change.ts'
import { specOf } from './lineSpec.ts'
import type { LineSketch } from './sketch.ts'

const RING: LineSketch = {
  zones: 8,
  zoneLength: 1.5,
  drive: { speed: 0.3 },
  carriers: { count: 3, length: 1.2 },
  stations: { in: { zone: 'Z01', load: { place: 10 } }, out: { zone: 'Z05', unload: { take: 8 } } },
  end: 3600,
}
const codes = (change: LineChange): string[] => specOf('loop', withChange(RING, change)).problems.map(({ code, path }) => `${code} ${path}`)

test('nothing is wrong with the base', () => expect(codes({})).toEqual([]))

test.each<[string, LineChange]>([
  ['E_NO_ZONES zones', { zones: [] }],
  ['E_DUPLICATE_NAME zones.Z01', { beside: ['Z01'] }],
  ['E_NAME zones.a/b', { beside: ['a/b'] }],
  ['E_ZERO zoneLength', { zoneLength: 0 }],
  ['E_NOT_FINITE drive.reaction', { drive: { reaction: Number.NaN } }],
  ['E_NEGATIVE drive.speed', { drive: { speed: -1 } }],
  ['E_UNKNOWN_ZONE own.Z9', { own: { Z9: { length: 1 } } }],
  ['E_TRAIN_TRANSFER zones.Z02.release', { own: { Z02: { release: 'train', transfer: { lift: 1, lower: 1 } } } }],
  ['E_LIST_EMPTY zones.Z02.merge.priority', { own: { Z02: { merge: { priority: [] } } } }],
  ['E_NEITHER putIn', { putIn: {} }],
  ['E_UNKNOWN_PLACE putIn', { putIn: { after: 'nowhere' } }],
  ['E_UNKNOWN_ZONE takeOut', { takeOut: ['Z99'] }],
  ['E_PATH_TWICE paths[1]', { paths: ['Z01 > Z03', 'Z01 > Z03'] }],
  ['E_PATH_CHAIN paths[0]', { paths: ['Z01'] }],
  ['E_PATH_TO_ITSELF paths[0].to', { paths: [{ from: 'Z01', to: 'Z01' }] }],
  ['E_POSITION paths[0].fromPosition', { paths: [{ from: 'Z01', fromPosition: 'high' }] }],
  ['E_MANUAL_MOVE paths[0]', { paths: [{ from: 'Z01', push: 'in' }] }],
  ['E_ONLY_ONE_OF paths[0].pull', { paths: [{ from: 'Z01', move: 3, push: 'in', pull: 'out' }] }],
  ['E_CLEAR_MOVE paths[0].clear', { paths: [{ from: 'Z01', clear: 'move' }] }],
  ['E_UNKNOWN_VARIANT paths[0].takes.variants', { paths: [{ from: 'Z01', takes: { variants: ['red'] } }] }],
  ['E_UNKNOWN_STATION paths[0].takes.forStation', { paths: [{ from: 'Z01', takes: { forStation: 'S9' } }] }],
  ['E_TOO_SMALL carriers.count', { carriers: 0 }],
  ['E_NOT_WHOLE carriers.count', { carriers: 2.5 }],
  ['E_CARRIERS_FILL carriers.count', { carriers: 8 }],
  ['E_START_COUNT carriers.start', { carriers: { start: ['Z01'] } }],
  ['E_START_TWICE carriers.start', { carriers: { start: ['Z01', 'Z01', 'Z02'] } }],
  ['E_CARRIER_LONG carriers.length', { carriers: { length: 2 } }],
  ['E_SENSOR zones', { drive: { sensorBeforeStop: 1.2 } }],
  ['E_ZONE_TAKEN stations.out.zone', { stations: { out: { zone: 0 } } }],
  ['E_NO_DUTY stations.idle', { stations: { idle: { zone: 'Z02' } } }],
  ['E_WORK_EMPTY stations.idle.work', { stations: { idle: { zone: 'Z02', work: {} } } }],
  ['E_TASK_TWICE stations.in.work.place', { stations: { in: { work: { place: 1 } } } }],
  ['E_UNKNOWN_TASK stations.out.unload.take', { tasks: ['place'] }],
  ['E_TIME_MISSING stations.in.load.place', { stations: { in: { load: { place: [] } } } }],
  ['E_TIME_FOR_NOBODY stations.in.load.place', { stations: { in: { load: { place: [null] } } } }],
  ['E_DISTRIBUTION stations.in.load.place', { stations: { in: { load: { place: { kind: 'uniform', min: 2, max: 1 } } } } }],
  ['E_WORKS_IN_BREAKS stations.in.worksInBreaks', { stations: { in: { worksInBreaks: true } } }],
  ['E_ONLY_ONE_OF stations.in.operatorsNeeded', { stations: { in: { automatic: true, operatorsNeeded: 1 } } }],
  ['E_SHARE_BEYOND stations.in.safetyStop.chance', { stations: { in: { safetyStop: { chance: 2, reset: 5 } } } }],
  ['E_SAFETY_SECTION stations.in.safetyStop', { sections: {}, stations: { in: { safetyStop: { chance: 0.1, reset: 5 } } } }],
  ['E_SUPPLY supply', { supply: {} }],
  ['E_SUPPLY_AT_ONCE supply.every', { supply: { every: 0 } }],
  ['E_TIMES_ORDER supply.times', { supply: { times: [2, 1] } }],
  ['E_ONLY_ONE_OF supply.times', { supply: { times: [2], every: 3 } }],
  ['E_SECTION_TWICE sections.b', { sections: { a: ['Z01'], b: ['Z01'] } }],
  ['E_LIST_EMPTY operators.Ann.stations', { operators: { Ann: { stations: [] } } }],
  ['W_OPERATORS_FEW stations.in.operatorsNeeded', { operators: { Ann: { stations: ['in'] } }, stations: { in: { operatorsNeeded: 2 } } }],
  ['E_WALK walks[0].between', { walks: [{ between: ['in', 'in'], lasts: 3 }] }],
  [
    'E_WALK_TWICE walks[1].between',
    {
      walks: [
        { between: ['in', 'out'], lasts: 3 },
        { between: ['out', 'in'], lasts: 5 },
      ],
    },
  ],
  ['E_TIMES_REACH end', { end: 1e10 }],
  ['E_TIMES_REACH breaks[0].after', { breaks: [{ after: 1e10, lasts: 5 }] }],
  ['E_INSPECTION inspections.take', { inspections: { take: 0.1 } }],
  ['E_REWORK rework.place', { rework: { place: 'again' } }],
  ['E_UNKNOWN_PART stops.jam.at', { stops: { jam: { at: 'every door', after: 60, lasts: 5 } } }],
  ['E_NO_PARTS stops.jam.at', { stops: { jam: { at: 'every transfer', after: 60, lasts: 5 } } }],
  ['E_NO_TRANSFER stops.jam.at', { stops: { jam: { at: 'transfer Z01', after: 60, lasts: 5 } } }],
  ['E_UNKNOWN_SECTION stops.jam.at', { stops: { jam: { at: 'section left', after: 60, lasts: 5 } } }],
  ['E_PART_AMBIGUOUS stops.jam.at', { sections: { in: ['Z01'] }, stops: { jam: { at: 'in', after: 60, lasts: 5 } } }],
  ['E_FAILS_AT_ONCE stops.jam.after', { stops: { jam: { at: 'in', after: 0, lasts: 5 } } }],
  ['E_DUPLICATE_NAME stops.jam', { stops: { jam: { at: ['in', 'in'], after: 60, lasts: 5 } } }],
  [
    'E_BREAKS_OVERLAP breaks[1].after',
    {
      breaks: [
        { after: 10, lasts: 10 },
        { after: 15, lasts: 10 },
      ],
    },
  ],
  ['E_WINDOW end', { warmup: 3600 }],
  ['E_NO_VARIANTS products.variants', { products: { variants: [] } }],
  ['E_MIX products.variants', { products: { variants: ['a', 'b'] } }],
  ['E_SHARES_ZERO products.variants', { products: { variants: { a: 0, b: 0 } } }],
  ['E_WEIGHTS_WHOLE products.variants', { products: { variants: { a: 0.5, b: 0.5 }, mix: 'levelled' } }],
  ['E_MIX_SHARES products.mix', { products: { variants: { a: 1 }, mix: { kind: 'list', sequence: ['a'] } } }],
  ['W_NO_UNLOAD stations', { stations: { out: null } }],
  ['W_STATION_UNREACHED stations.late.zone', { stations: { late: { zone: 'Z07', work: 3 } } }],
])('%s', (finding, change) => expect(codes(change)).toContain(finding))

test('nothing is said of a graph or loop twice: the finding of a wrong reference stands alone', () => {
  expect(codes({ stations: { in: { zone: 'Z-02' } } })).toEqual(['E_UNKNOWN_ZONE stations.in.zone'])
})

test('everything is told at once: what has not its form, what has a wrong value, and what is wrong with the layout', () => {
  const wrong = {
    drive: { acc: 3, speed: '0.3 m/s' },
    stations: { in: { load: '10 s' }, look: { zone: 'Z-06', wrok: 3 }, idle: { zone: 'Z03' }, bare: 'Z04' },
    stops: { jam: { at: 'fti', after: -3, lasts: 'x' } },
    warmup: 4000,
  } as unknown as LineChange
  expect(codes(wrong)).toEqual([
    'E_TYPE drive.speed',
    'E_UNKNOWN_KEY drive.acc',
    'E_TYPE stations.in.load',
    'E_UNKNOWN_KEY stations.look.wrok',
    'E_TYPE stations.bare',
    'E_TYPE stops.jam.lasts',
    'E_UNKNOWN_ZONE stations.look.zone',
    'E_NO_DUTY stations.idle',
    'E_UNKNOWN_PART stops.jam.at',
    'E_NEGATIVE stops.jam.after',
    'E_WINDOW end',
  ])
  expect(codes({ carriers: 8, stations: { out: { zone: 'Z-05' } } })).toEqual([
    'E_UNKNOWN_ZONE stations.out.zone',
    'E_CARRIERS_FILL carriers.count',
  ])
})

test('as many zones are put in as are wanted, if they can be', () => {
  expect(specOf('loop', withChange(RING, { putIn: { after: 'Z02', zones: 800 } })).spec.zones.length).toBe(808)
  expect(codes({ putIn: { after: 'Z02', zones: 1e9 } })).toEqual(['E_TOO_MANY_ZONES putIn.zones'])
})

test('one length of all zones is wrong in one place', () => expect(codes({ zoneLength: Number.NaN })).toEqual(['E_NOT_FINITE zoneLength']))

test('before the first zone of a straight line is its beginning, of a loop behind the last one; a graph has no order to put zones into', () => {
  const names = (shape: 'loop' | 'straight') =>
    specOf(shape, withChange(RING, { putIn: { before: 'in', zones: 2 } })).spec.zones.map(({ name }) => name)
  expect(names('loop').slice(-3)).toEqual(['Z08', 'Z08a', 'Z08b'])
  expect(names('straight').slice(0, 3)).toEqual(['Z01a', 'Z01b', 'Z01'])
  const { spec } = specOf('straight', withChange(RING, { putIn: { before: 'in' } }))
  expect(spec.paths[0]).toMatchObject({ from: -1, to: 0 })
  expect(spec.stations[0]!.zone).toBe(1)
  const graph = specOf('graph', { ...RING, paths: ['Z01 > Z05 > Z01'], putIn: { after: 'Z01' } })
  expect(graph.problems.map(({ code }) => code)).toContain('E_PUT_IN_LOOP')
})
