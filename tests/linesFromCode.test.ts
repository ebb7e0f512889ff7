/** A line written in code is checked by the rules of a scenario file, in the same words: each wrong line stands here in both forms. */
import {
  canRecur,
  createSimulator,
  derivedTimes,
  type GivenLine,
  isPlainLoop,
  type LineChange,
  LineError,
  loopLine,
  simulate,
  startZones,
} from '@loopwright/line'
import { law, lawOrNull, lineLimits } from '@loopwright/line/bounds'
import { checkLine } from '@loopwright/line/check'
import { lineFigures, measuredWalks, NOTHING_GIVEN, screen, walksOn } from '@loopwright/decide/screening'
import { readScenario, writeLine } from '@loopwright/scenario'
import {
  carrierStays,
  chooseCarriers,
  defaultCounts,
  diagnose,
  findDrivers,
  findLosses,
  findSteadyState,
  growingSweep,
  inputDoubt,
  mostCarriers,
  orderStations,
  replicate,
  runMany,
  runsResult,
  standstillOf,
  sweepCarriers,
  traceRun,
} from '@loopwright/study'
import { longerWork, otherStops, recalibrate, runTrials } from '@loopwright/study/trials'
import {
  driversOf,
  limitWarnings,
  lineFacts,
  lineTasks,
  lossCauses,
  placesOf,
  tooManyEvents,
  wholeChanges,
  withCarriers,
  withPlaces,
} from '@loopwright/study/change'
import { compareLines, growingComparison, runAlternatives, runGrid } from '@loopwright/study/compare'
import { describe, expect, test } from 'vitest'
import { surfaceOf } from './surface/surfaceOf.ts'
import { DOORS } from './tidy/imports.ts'

const line = loopLine({
  zones: 8,
  zoneLength: 1.5,
  drive: { speed: 0.3, reaction: 0.5 },
  carriers: { count: 3, length: 1.2 },
  stations: { in: { zone: 'Z01', load: { place: 10 } }, out: { zone: 'Z05', unload: { take: 8 } } },
  end: 3600,
})
const FILE = `format: 1
name: Ring
question: Is it read?
warmup: 0 s
length: 1 h
drive: { speed: 0.3 m/s, reaction: 0.5 s }
carriers: { count: 3, length: 1.2 m }
loop: 8 zones of 1.5 m
stations:
  in: { zone: Z01, load: { place: 10 s } }
  out: { zone: Z05, unload: { take: 8 s } }
`
const read = (...[from, to]: readonly string[]) => readScenario(FILE.replace(from!, to!))

test('both forms give the same line', () => expect(line.spec).toEqual(read('', '').scenario!.line))

const told = ({ code, severity, message, fix }: { code: string; severity: string; message: string; fix: string }) => ({
  code,
  severity,
  message,
  fix,
})

describe.each<[string, LineChange, string, string]>([
  ['a zone that is not there', { stations: { out: { zone: 'Z-O7' } } }, 'Z05', 'Z-O7'],
  ['a zone taken twice', { stations: { out: { zone: 'Z01' } } }, 'Z05', 'Z01'],
  ['no hole', { carriers: 8 }, 'count: 3', 'count: 8'],
  [
    'every zone full',
    { own: { Z02: { transfer: { lift: 1, lower: 1, enterOnlyIfExitClear: true } } }, carriers: { count: 7, width: 1.2 } },
    'count: 3, length: 1.2 m }',
    'count: 7, length: 1.2 m, width: 1.2 m }\nzones: { Z02: { transfer: { lift: 1 s, lower: 1 s, enterOnlyIfExitClear: true } } }',
  ],
  ['a carrier longer than its zones', { carriers: { length: 2 } }, '1.2 m', '2 m'],
  [
    'a sensor before the whole carrier',
    { drive: { sensorBeforeStop: 1.2 } },
    'reaction: 0.5 s',
    'reaction: 0.5 s, sensorBeforeStop: 1.2 m',
  ],
  ['two carriers in one zone', { carriers: { start: ['Z01', 'Z01', 'Z02'] } }, 'count: 3', 'count: 3, start: [Z01, Z01, Z02]'],
  ['a station without work', { stations: { idle: { zone: 'Z03' } } }, 'stations:', 'stations:\n  idle: { zone: Z03 }'],
  ['work in breaks by people', { stations: { in: { worksInBreaks: true } } }, 'zone: Z01', 'zone: Z01, worksInBreaks: true'],
  ['a task that stands twice', { stations: { in: { work: { place: 4 } } } }, 'place: 10 s }', 'place: 10 s }, work: { place: 4 s }'],
  [
    'a station behind the unload',
    { stations: { late: { zone: 'Z07', work: { look: 9 } } } },
    'stations:',
    'stations:\n  late: { zone: Z07, work: { look: 9 s } }',
  ],
  [
    'more people than there are',
    { operators: { Ann: { stations: ['in'] } }, stations: { in: { operatorsNeeded: 2 } } },
    'stations:\n  in: { zone: Z01,',
    'operators: { Ann: { stations: [in] } }\nstations:\n  in: { zone: Z01, operatorsNeeded: 2,',
  ],
  [
    'a stop of nothing',
    { stops: { jam: { at: 'every transfer', after: 60, lasts: 5 } } },
    'stations:',
    'stops: { jam: { at: every transfer, after: 60 s, lasts: 5 s } }\nstations:',
  ],
  [
    'a stop at once',
    { stops: { jam: { at: 'in', after: 0, lasts: 5 } } },
    'stations:',
    'stops: { jam: { at: in, after: 0 s, lasts: 5 s } }\nstations:',
  ],
  [
    'a name with a stroke',
    { stops: { 'a/b': { at: 'in', after: 60, lasts: 5 } } },
    'stations:',
    'stops: { a/b: { at: in, after: 60 s, lasts: 5 s } }\nstations:',
  ],
  [
    'a walk given twice',
    {
      walks: [
        { between: ['in', 'out'], lasts: 3 },
        { between: ['out', 'in'], lasts: 5 },
      ],
    },
    'stations:',
    'walks: [{ between: [in, out], lasts: 3 s }, { between: [out, in], lasts: 5 s }]\nstations:',
  ],
  ['a path to itself', { paths: [{ from: 'Z01', to: 'Z01' }] }, 'stations:', 'paths: [{ from: Z01, to: Z01 }]\nstations:'],
])('%s', (_, change, from, to) => {
  test('is told in the same words', () => {
    const inFile = read(from, to).problems.map(told)
    let inCode: readonly ReturnType<typeof told>[] = []
    try {
      inCode = line.with(change).warnings.map(told)
    } catch (error) {
      if (!(error instanceof LineError)) throw error
      inCode = error.problems.map(told)
    }
    expect(inFile.length).toBeGreaterThan(0)
    expect(inCode).toEqual(inFile)
  })
})

const world = { seed: '1', replication: 0 }
const options = { seed: '1', workers: 0 }
const random = line.with({
  zones: 5,
  carriers: { count: 2 },
  stations: { out: { unload: { take: { kind: 'lognormal', mean: 20, cv: 0.3 } } } },
  end: 1800,
})

/** two of them, as comparisons ask for lines */
const twice = (given: GivenLine) => ['a', 'b'].map((name) => ({ name, line: given, plan: null }))

const WALKS = [{ of: 'in', metres: 4, measured: 'tape' }]

/** By name: each public function that takes a line, asked something small. */
const TAKE_LINES: Record<string, (given: GivenLine) => unknown> = {
  simulate: (given) => simulate(given, world),
  createSimulator: (given) => createSimulator(given).run(world),
  canRecur,
  isPlainLoop,
  startZones,
  derivedTimes,
  law,
  lawOrNull,
  lineLimits,
  checkLine,
  writeLine,
  replicate: (given) => replicate(given, { replications: 2 }, options),
  traceRun: (given) => traceRun(given, { replication: 0 }, options),
  runMany: (given) => runMany(given, { replications: 2, plan: null }, options),
  runsResult: (given) => runsResult(given, [simulate(given, world)], { seed: '1', replications: 1, plan: null }),
  sweepCarriers: (given) => sweepCarriers(given, { counts: [2], replications: 2 }, options),
  growingSweep: async (given) => {
    const told: unknown[] = []
    await growingSweep({ seed: '1' }).sweep(given, { counts: [2], plan: null, stages: [2] }, { onStage: (result) => told.push(result) })
    return told
  },
  chooseCarriers: (given) => chooseCarriers(given, { counts: [2], replicationsMax: 50 }, options),
  defaultCounts,
  mostCarriers,
  compareLines: (given) => compareLines(twice(given), { replications: 2 }, options),
  growingComparison: (given) => growingComparison({ seed: '1' }).compare(twice(given), { stages: [2] }, {}),
  runAlternatives: (given) => runAlternatives(twice(given), { replications: 2, cycles: true }, options),
  runGrid: (given) => {
    const factors = [{ name: 'x', levels: ['1', '2'] }]
    const points = [1, 2].map((plan) => ({ line: given, plan }))
    return runGrid(points, { factors, replications: 2, base: { line: given, plan: null } }, options)
  },
  findDrivers: (given) => findDrivers(given, { replications: 2 }, options),
  findLosses: (given) => findLosses(given, { replications: 2, bestCarriers: 2 }, options),
  orderStations: (given) => orderStations(given, { move: [1], zones: [3, 4], firstStage: 3, check: 2 }, options),
  findSteadyState: (given) => findSteadyState(given, { replications: 2 }, options),
  inputDoubt: (given) => inputDoubt(given, { redrawn: [1, 2, 3].map((level) => ({ line: given, levels: [level] })) }, options),
  runTrials: (given) => runTrials(given, { seconds: 1200, lookSeconds: 600, longer: 0.1, replications: 2 }, options),
  recalibrate: (given) => recalibrate(given, { units: 60, replications: 2 }, options),
  longerWork: (given) => longerWork(given, 1.1),
  otherStops: (given) => otherStops(given, new Map()),
  carrierStays: async (given) => carrierStays((await traceRun(given, { replication: 0 }, options))!.trace, given),
  lineFacts,
  limitWarnings: (given) => limitWarnings(given, 1e6),
  tooManyEvents,
  withCarriers: (given) => withCarriers(given, 3),
  withPlaces: (given) => withPlaces(given, [0, 2]),
  placesOf,
  driversOf: (given) => driversOf(given).map(({ name }) => name),
  wholeChanges: (given) => wholeChanges(given).map(({ name }) => name),
  lossCauses: (given) => lossCauses(given).map(({ name }) => name),
  lineTasks,
  diagnose: (given) => diagnose({ line: given, shares: null, units: null }),
  standstillOf: (given) => standstillOf(given, { reason: 'gridlock', atSeconds: 9, waits: [[0, 1]], cycle: [0], unmanned: [] }),
  screen: (given) => screen(given, { ...NOTHING_GIVEN, mass: 115, people: 'working' }, []),
  lineFigures,
  walksOn: (given) => walksOn(given, WALKS),
  measuredWalks: (given) => measuredWalks(given, WALKS, [300, 300]),
}

describe('a line from code is taken as its complete form', () => {
  test.each(Object.entries(TAKE_LINES))('%s', async (_, ask) => expect(await ask(random)).toEqual(await ask(random.spec)))

  /** a scenario is complete, and what it says of one may go with it; a part of a line is no line */
  const asks = (signature: string): boolean => /\((?:[^)]*, )?\w+: (?:GivenLine|readonly \w+Asked\[\])\b/.test(signature)
  const surface = ['line', 'scenario', 'study', 'decide'].flatMap((name) =>
    ['', ...(DOORS[name] ?? [])].flatMap((door) => surfaceOf(`packages/${name}/src/${door === '' ? '' : `${door}/`}index.ts`)),
  )
  const named = (told: (signature: string) => boolean): string[] =>
    surface.flatMap((line) => (told(line) && /^\w+: (function|const)/.test(line) ? [line.split(':')[0]!] : []))

  test('by every public function that takes one, all of which stand here', () => {
    expect(named((line) => asks(line)).filter((name) => !(name in TAKE_LINES) && name !== 'completeLine')).toEqual([])
    // complete ones alone are taken by the steps of checkLine, which a file goes through before there is a line
    expect(named((line) => /\w+: LineSpec\b/.test(line.split('): ')[0]!))).toEqual(['checkFlow', 'productZones'])
  })
})
