import { describe, expect, test } from 'vitest'
import { checkForm } from './form.ts'
import { createReport } from './report.ts'
import type { LineSketch } from './sketch.ts'

/** what every line has */
const LINE = { zones: 4, carriers: 3, end: 60 }

function looked(sketch: unknown): { readonly found: string[]; readonly whole: LineSketch | null } {
  const report = createReport()
  const whole = checkForm(report, sketch as LineSketch)
  return { found: report.problems.map(({ path, message, fix }) => `${path}: ${message}; ${fix}`), whole }
}
const found = (sketch: object): string[] => looked({ ...LINE, ...sketch }).found

describe('keys that no line has', () => {
  const slips = (sketch: object): string[] => found(sketch).map((told) => told.replace(/: .*; /, ': '))

  test('at every place, each with the word that was most likely meant', () => {
    expect(
      slips({
        zones: [{ name: 'A', lenght: 1 }],
        paths: ['A > B', { from: 'A', puhs: 'S1' }],
        drive: { speed: 1, reactoin: 3 },
        carriers: { count: 4, widht: 1 },
        stations: { S1: { zone: 'A', wrok: { fit: 5 } } },
        operators: { anna: { stations: ['S1'], strat: 'S1' } },
        stops: { jam: { at: 'S1', after: 1, lasts: 1, clok: 'calendar' } },
        own: { A: { relaese: 'train' } },
        ned: 3600,
      }),
    ).toEqual([
      'zones[0].lenght: did you mean "length"?',
      'carriers.widht: did you mean "width"?',
      'paths[1].puhs: did you mean "push"?',
      'drive.reactoin: did you mean "reaction"?',
      'stations.S1.wrok: did you mean "work"?',
      'operators.anna.strat: did you mean "start"?',
      'stops.jam.clok: did you mean "clock"?',
      'own.A.relaese: did you mean "release"?',
      'ned: did you mean "end"?',
    ])
  })

  test('within parts of parts too, and what can be read is read on', () => {
    const sketch = {
      ...LINE,
      zones: [{ transfer: { lift: 1, lower: 1, exitClear: true } }],
      beside: [{ name: 'B', merge: { priority: ['A'], to: 'A' } }],
      putIn: [{ after: 'A' }, { befor: 'B' }],
      paths: [{ from: 'A', takes: { variant: ['x'] } }],
      stations: {
        S1: {
          zone: 'A',
          supply: { evrey: 3 },
          receiver: { cycle: 3, queueLimit: 2 },
          safetyStop: { chance: 0.1, reset: 3, tme: 1 },
        },
      },
      products: { variants: ['x'], mixx: 'random', mix: { kind: 'list', sequence: ['x'], sequense: ['x'] } },
      supply: { every: 3, queueLimit: 10 },
      walks: [{ between: ['S1', 'S2'], lasts: 3, last: 3 }],
      breaks: [{ after: 3, lasts: 3, name: 'lunch' }],
    }
    const { found: told, whole } = looked(sketch)
    expect(whole).toMatchObject({ end: 60, walks: [{ between: ['S1', 'S2'], lasts: 3 }], supply: { every: 3 } })
    expect(told.map((one) => one.split(':')[0])).toEqual([
      'zones[0].transfer.exitClear',
      'beside[0].merge.to',
      'putIn[1].befor',
      'paths[0].takes.variant',
      'stations.S1.supply.evrey',
      'stations.S1.receiver.queueLimit',
      'stations.S1.safetyStop.tme',
      'products.mixx',
      'products.mix.sequense',
      'supply.queueLimit',
      'walks[0].last',
      'breaks[0].name',
    ])
  })

  test('what is undefined, and the names of parts, are no slip', () => {
    expect(found({ drive: undefined, whatever: undefined, stations: { anything: { zone: 'A', work: { what: 3 } } } })).toEqual([])
    expect(
      found({ stations: { A: { zone: 0, work: { fit: { kind: 'uniform', min: 1, max: 2 }, look: [3, null], glue: { x: null } } } } }),
    ).toEqual([])
  })
})

describe('what stands where something else should', () => {
  test.each<[string, object, string[]]>([
    [
      'a word',
      { products: { mix: 'rndom' } },
      ['products.mix: "rndom" cannot stand here; did you mean "random"? It is "random" or "levelled"'],
    ],
    ['a word of none', { own: { Z01: { divert: 'x' } } }, ['own.Z01.divert: "x" cannot stand here; it is "first", "alternate" or "free"']],
    ['a text for a yes', { conveyorDuringBreaks: 'yes' }, ['conveyorDuringBreaks: found the text "yes"; write true or false']],
    ['a list for parts by name', { stations: [] }, ['stations: found a list; write a set of keys, one for each name']],
    ['nothing', { stops: { jam: null } }, ['stops.jam: found nothing; write a set of keys']],
    [
      'a text for a time',
      { stations: { A: { zone: 0, work: '30 s' } } },
      ['stations.A.work: found the text "30 s"; write seconds as a number, or a distribution'],
    ],
    ['half a zone', { zones: 2.5 }, ['zones: 2.5 is not a whole number; write a whole number without a unit']],
    ['one name for a list', { takeOut: 'Z01' }, ['takeOut: found the text "Z01"; write a list']],
    [
      'nothing where there must be something',
      { stations: { A: { work: 3 } }, end: undefined },
      ['stations.A.zone: "zone" is missing; add "zone:" with the name of a zone', 'end: "end" is missing; add "end:" with seconds'],
    ],
  ])('%s', (_, sketch, told) => expect(found(sketch)).toEqual(told))

  test('what cannot be read at all is told as such; anything else is read on without it, and what others may name stays', () => {
    expect(looked(undefined)).toEqual({ found: ['line: found nothing; write a set of keys'], whole: null })
    expect(looked({ ...LINE, zones: 'four' }).whole).toBe(null)
    expect(looked({ ...LINE, drive: { release: 'trian', speed: 1 } }).whole).toEqual({ ...LINE, drive: { speed: 1 } })
    expect(looked({ ...LINE, stations: { A: 'Z01', B: { zone: 0, work: { fit: '5 s' } } } }).whole!.stations).toEqual({
      A: { zone: '' },
      B: { zone: 0, work: { fit: 1 } },
    })
  })
})

describe('distributions', () => {
  const at = (time: unknown) => found({ stations: { A: { zone: 0, work: { fit: time } } } })

  test('have the keys of their kind and no others', () => {
    expect(at({ kind: 'lognormal', mean: 30, cv: 0.2, sd: 3 })).toEqual([
      'stations.A.work.fit.sd: there is no key "sd" here; the keys here are kind, mean, cv',
    ])
    expect(at({ kind: 'uniform', min: 1, max: 2 })).toEqual([])
    expect(at({ kind: 'limited', of: { kind: 'exponential', mean: 4, cv: 1 }, shift: 1, min: null, max: null })).toEqual([
      'stations.A.work.fit.of.cv: there is no key "cv" here; the keys here are kind, mean',
    ])
  })
  test('without a kind are no tasks called after their parameters', () => {
    const told = [expect.stringMatching(/^stations.A.work: "kind" is missing; add "kind:" with one of constant, uniform, /)]
    expect(found({ stations: { A: { zone: 0, work: { mean: 30, cv: 0.2 } } } })).toEqual(told)
    expect(at({ mean: 30, cv: 0.2 })).toEqual([expect.stringMatching(/^stations.A.work.fit: "kind" is missing/)])
    expect(found({ stations: { A: { zone: 0, work: { mean: 30, fit: 2 } } } })).toEqual([])
    expect(found({ stations: { A: { zone: 0, work: { shape: 30, scale: 2 } } } })).toEqual([])
  })
})

test('a line of more zones than anybody draws is refused before it is made', () => {
  expect(found({ zones: 1e9 })).toEqual(['zones: 1000000000 zones are more than can be read; the most is 100000'])
})
