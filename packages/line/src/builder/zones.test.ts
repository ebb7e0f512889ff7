import { expect, test } from 'vitest'
import { createReport } from './report.ts'
import type { LineSketch } from './sketch.ts'
import { zoneSpec, zonesOf } from './zones.ts'

const of = (sketch: Partial<LineSketch>) => {
  const report = createReport()
  const whole: LineSketch = { zones: 0, carriers: 1, end: 1, ...sketch }
  const zones = zonesOf(report, 'loop', whole)
  return { names: zones.names.list, specs: zones.all.map((zone) => zoneSpec(report, whole, zone, zones.names)), problems: report.problems }
}

test('names count from 1, with two digits or as many as the last one has', () => {
  expect(of({ zones: 3 }).names).toEqual(['Z01', 'Z02', 'Z03'])
  expect(of({ zones: 100 }).names[7]).toBe('Z008')
  expect(of({ zones: ['load', {}, { name: 'fit' }] }).names).toEqual(['load', 'Z02', 'fit'])
})

test('a length of its own by name, else in the list, else that of all', () => {
  const { specs } = of({ zones: [{}, { length: 2 }, { length: 2 }], zoneLength: 1, own: { Z03: { length: 3 } } })
  expect(specs.map(({ lengthMetres }) => lengthMetres)).toEqual([1, 2, 3])
})

test('zones put in before and after a station, and taken out', () => {
  const stations = { fit: { zone: 'Z02', work: 1 } }
  expect(of({ zones: 3, stations, putIn: { before: 'fit' } }).names).toEqual(['Z01', 'Z01a', 'Z02', 'Z03'])
  expect(of({ zones: 3, stations, putIn: { after: 'fit', zones: 2 }, takeOut: ['Z03'] }).names).toEqual(['Z01', 'Z02', 'Z02a', 'Z02b'])
})

test('a line of which all zones are taken out has none; what is not known names what is near', () => {
  expect(of({ zones: 1, takeOut: ['Z01'] }).problems.map(({ path, code }) => `${code} ${path}`)).toEqual(['E_NO_ZONES takeOut'])
  const wrong = of({ zones: ['load', 'glue', 'fit'], own: { Load: {} }, takeOut: ['glu'], putIn: { after: 'fitt' } }).problems
  expect(wrong.map(({ path, fix }) => `${path}: ${fix}`)).toEqual([
    'putIn: did you mean "fit"?',
    'takeOut: did you mean "glue"?',
    'own.Load: did you mean "load"?',
  ])
})

test('right of way by name', () => {
  const { specs } = of({ zones: [{ merge: { priority: ['Z02', 'store'] } }, { merge: 'alternate', divert: 'free' }] })
  expect(specs.map(({ merge }) => merge)).toEqual([{ kind: 'priority', from: [1, -1] }, { kind: 'alternate' }])
  expect(specs[1]!.divert).toBe('free')
})
