import { describe, expect, test } from 'vitest'
import { graphLine, loopLine } from '../builder/sketchedLine.ts'
import { checkLeftToDo } from './leftToDo.ts'

const COMMON = { zoneLength: 2, drive: { speed: 1 }, carriers: { count: 1, length: 1 }, end: 60 }
const ends = { in: { zone: 'Z02', load: 10 }, out: { zone: 'Z06', unload: 10 } }

const told = (stations: object, more: object = {}): string[] =>
  checkLeftToDo(loopLine({ ...COMMON, zones: 6, stations: { ...ends, ...stations }, ...more }).spec).map(
    (finding) => finding.say([]).message,
  )

describe('two stations of a loop with one task', () => {
  const fit = (zone: string) => ({ zone, work: { fit: 10 } })

  test('leave nothing to do for the second, in the order of travel, not of the text', () => {
    const said = 'nothing is left to do at station "B": every product has had "fit" at "A" before it gets there'
    expect(told({ A: fit('Z03'), B: fit('Z04') })).toEqual([said])
    expect(told({ B: fit('Z04'), A: fit('Z03') })).toEqual([said])
  })

  test('are told of where it is a task of the load station too', () =>
    expect(told({ in: { zone: 'Z02', load: { fit: 10 } }, B: fit('Z04') })).toEqual([
      'nothing is left to do at station "B": every product has had "fit" at "in" before it gets there',
    ]))

  test('are right where the second has a task of its own', () =>
    expect(told({ A: fit('Z03'), B: { zone: 'Z04', work: { fit: 10, glue: 5 } } })).toEqual([]))

  test('are right where names differ, and where nothing is loaded', () => {
    expect(told({ A: fit('Z03'), B: { zone: 'Z04', work: { glue: 10 } } })).toEqual([])
    expect(told({ in: { zone: 'Z02', work: { place: 10 } }, A: fit('Z03'), B: fit('Z04') })).toEqual([])
  })
})

test('two lanes with one task both have something to do; a third station behind them has not', () => {
  const lanes = (...more: string[]) =>
    graphLine({
      ...COMMON,
      zones: [{}, { divert: 'free' }, {}, {}, {}, {}],
      paths: ['Z01 > Z02 > Z03 > Z05 > Z06 > Z01', 'Z02 > Z04 > Z05'],
      stations: {
        in: { zone: 'Z01', load: 10 },
        A: { zone: 'Z03', work: { fit: 10 } },
        B: { zone: 'Z04', work: { fit: 10 } },
        ...Object.fromEntries(more.map((name) => [name, { zone: 'Z05', work: { fit: 10 } }])),
        out: { zone: 'Z06', unload: 10 },
      },
    }).spec
  expect(checkLeftToDo(lanes())).toEqual([])
  expect(checkLeftToDo(lanes('C')).map((finding) => finding.say([]).message)).toEqual([
    'nothing is left to do at station "C": every product has had "fit" at "A" and "B" before it gets there',
  ])
})
