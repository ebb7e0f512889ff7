import { PLAIN_STATION } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(...changes: [string, string][]) {
  const { scenario, problems, notes } = readScenario(scenarioText(...changes))
  return { line: scenario?.line, stations: scenario?.line.stations ?? [], codes: problems.map((problem) => problem.code), notes }
}

describe('stations', () => {
  test('a complete one, in written order, with duties that are not there as null', () => {
    const { stations, line } = read()
    expect(stations.map((station) => [station.name, station.zone])).toEqual([
      ['Load', 0],
      ['Fit', 3],
      ['Unload', 7],
    ])
    expect(stations[1]).toEqual({
      name: 'Fit',
      title: 'Fit',
      zone: 3,
      unload: null,
      load: null,
      work: [{ task: 1, seconds: [{ kind: 'lognormal', mean: 40, cv: 0.1 }] }],
      releaseSeconds: { kind: 'constant', value: 0 },
      ...PLAIN_STATION,
    })
    expect(line?.tasks).toEqual(['place', 'fit', 'take'])
  })
  test('defaults for every station are replaced by own values', () => {
    const { stations } = read(
      ['zone: Z04,', 'name: Fit it, zone: Z04, release: 1..2 s, worksInBreaks: false,'],
      ['', 'defaults: { station: { release: 2 s, automatic: true, worksInBreaks: true } }'],
    )
    expect(stations.map((station) => [station.title, station.releaseSeconds.kind, station.operatorsNeeded, station.worksInBreaks])).toEqual(
      [
        ['Load', 'constant', 0, true],
        ['Fit it', 'uniform', 0, false],
        ['Unload', 'constant', 0, true],
      ],
    )
  })
  test('an empty load or unload is a duty of 0 s', () => {
    expect(read(['load: { place: 30 s ± 10 % }', 'load: {}']).stations[0]).toMatchObject({ load: [], unload: null, work: null })
  })
  test('names that look like numbers keep the written order', () => {
    expect(read(['  Load:', '  "20":'], ['  Fit:', '  "3":']).stations.map((station) => station.name)).toEqual(['20', '3', 'Unload'])
  })
  test('a task may be shared between stations, each with its own time', () => {
    const { line } = read(['unload: { take: 20 s ± 10 % }', 'unload: { take: 20 s }, work: { fit: 55 s }'])
    expect(line?.stations[2]?.work).toEqual([{ task: 1, seconds: [{ kind: 'constant', value: 55 }] }])
  })
  test('tasks may be listed in an order of their own', () => {
    const { line } = read(['', 'tasks: [take, spare, fit, place]'])
    expect(line?.tasks).toEqual(['take', 'spare', 'fit', 'place'])
    expect(line?.stations[1]?.work?.[0]?.task).toBe(2)
  })
  test.each<[string, [string, string], string]>([
    ['two in a zone', ['Z04', 'Z01'], 'E_ZONE_TAKEN'],
    ['one task twice', ['work: {', 'load: { fit: 1 s }, work: {'], 'E_TASK_TWICE'],
    ['no duty', [', work: { fit: 40 s ± 10 % }', ''], 'E_NO_DUTY'],
    ['people working in breaks', ['Z04,', 'Z04, worksInBreaks: true,'], 'E_WORKS_IN_BREAKS'],
    [
      'an option for nobody',
      ['stations:', 'products: { options: { kit: { share: 1 %, adds: { fiddle: 2 s } } } }\nstations:'],
      'E_UNKNOWN_TASK',
    ],
  ])('%s is refused', (_, change, code) => {
    expect(read(change).codes).toEqual([code])
  })
})
