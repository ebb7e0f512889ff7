/** A line written in code is checked by the rules of a scenario file, in the same words: each wrong line stands here in both forms. */
import { type LineChange, LineError, loopLine } from '@loopwright/line'
import { readScenario } from '@loopwright/scenario'
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
