/** A line written in code is checked by the rules of a scenario file, in the same words: each wrong line stands here in both forms. */
import { createSimulator, type GivenLine, type LineChange, LineError, loopLine, simulate } from '@loopwright/line'
import { law, lineLimits } from '@loopwright/line/bounds'
import { readScenario } from '@loopwright/scenario'
import {
  chooseCarriers,
  findDrivers,
  findLosses,
  findSteadyState,
  orderStations,
  replicate,
  runMany,
  sweepCarriers,
  traceRun,
} from '@loopwright/study'
import { compareLines, runGrid } from '@loopwright/study/compare'
import { describe, expect, test } from 'vitest'

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

describe.each<[string, (given: GivenLine) => unknown]>([
  ['simulate', (given) => simulate(given, world)],
  ['createSimulator', (given) => createSimulator(given).run(world)],
  ['law', (given) => law(given)],
  ['lineLimits', (given) => lineLimits(given)],
  ['replicate', (given) => replicate(given, { replications: 2 }, options)],
  ['traceRun', (given) => traceRun(given, { replication: 0 }, options)],
  ['runMany', (given) => runMany(given, { replications: 2, plan: null }, options)],
  ['sweepCarriers', (given) => sweepCarriers(given, { counts: [2], replications: 2 }, options)],
  ['chooseCarriers', (given) => chooseCarriers(given, { counts: [2], replicationsMax: 50 }, options)],
  [
    'compareLines',
    (given) =>
      compareLines(
        ['a', 'b'].map((name) => ({ name, line: given, plan: null })),
        { replications: 2 },
        options,
      ),
  ],
  [
    'runGrid',
    (given) => {
      const factors = [{ name: 'x', levels: ['1', '2'] }]
      const points = [1, 2].map((plan) => ({ line: given, plan }))
      return runGrid(points, { factors, replications: 2, base: { line: given, plan: null } }, options)
    },
  ],
  ['findDrivers', (given) => findDrivers(given, { replications: 2 }, options)],
  ['findLosses', (given) => findLosses(given, { replications: 2, bestCarriers: 2 }, options)],
  ['orderStations', (given) => orderStations(given, { move: [1], zones: [3, 4], firstStage: 3, check: 2 }, options)],
  ['findSteadyState', (given) => findSteadyState(given, { replications: 2 }, options)],
])('%s', (_, study) => {
  test('takes a line from code as its complete form', async () => expect(await study(random)).toEqual(await study(random.spec)))
})
