import { expect, test } from 'vitest'
import { checkKeys } from './keys.ts'
import { createReport } from './report.ts'
import type { LineSketch } from './sketch.ts'

const found = (sketch: unknown): string[] => {
  const report = createReport()
  checkKeys(report, sketch as LineSketch)
  return report.problems.map(({ path, fix }) => `${path}: ${fix}`)
}

test('keys that no line has, at every place, each with the word that was most likely meant', () => {
  expect(
    found({
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
    'ned: did you mean "end"?',
    'drive.reactoin: did you mean "reaction"?',
    'carriers.widht: did you mean "width"?',
    'zones[0].lenght: did you mean "length"?',
    'paths[1].puhs: did you mean "push"?',
    'own.A.relaese: did you mean "release"?',
    'stations.S1.wrok: did you mean "work"?',
    'operators.anna.strat: did you mean "start"?',
    'stops.jam.clok: did you mean "clock"?',
  ])
})

test('what is undefined, and the names of parts, are no slip', () => {
  expect(
    found({ zones: 4, drive: undefined, whatever: undefined, carriers: 3, stations: { anything: { zone: 'A', work: { what: 3 } } } }),
  ).toEqual([])
})
